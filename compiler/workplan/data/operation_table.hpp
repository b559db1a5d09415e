// The work that every piece needs beside its joints and shapes, and how long things take:
// stdlib/data/operations.yaml.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/geometry/geometry.hpp"
#include "compiler/graph/stage.hpp"
#include "compiler/quantity/rational.hpp"

namespace rodwright {

std::string_view stage_title(Stage stage);  // "Laying out"

// Which parts general work is done to; where there are none it is left out. `boards` are parts of solid wood
// in one piece, `panels` parts that are glued from boards, `staves` the same parts while they still are these
// boards, `taken` parts with a size that is taken from the work.
enum class AppliesTo : std::uint8_t { all, boards, panels, staves, sheets, joined, glued, finish, taken };

// What one operation is made for: all parts together, those of one size, or each coat of the finish.
enum class Each : std::uint8_t { together, thickness, width, length, coat };

// Seconds; exact, so that they add up.
struct TimeNeeded {
    Rational set_up;
    Rational each;  // for each part, joint or use of a shape
    Rational foot;  // for each foot along the grain of each part
    Rational area;  // for each square foot of surface
    bool assumed = true;
};

struct GeneralOperation {
    std::string name;  // "flatten_face"
    Stage stage{};
    AppliesTo applies{};
    Each each{};
    std::vector<Axis> brings;           // sizes that it brings parts to; a kind's axes
    std::vector<std::string> machines;  // the first that will do; none: by hand
    std::vector<std::pair<std::string, std::string>> settings;  // "fence" and "width", or other words
    bool test_piece = false;
    std::string text;  // `{finish}` stands for the finish and its coat
    std::string caution;
    TimeNeeded time;
};

struct OperationTable {
    std::string caution;  // once, before all work
    std::vector<GeneralOperation> operations;
    std::map<std::string, TimeNeeded> step_times;  // by `joint.step` and by the step's name
    std::map<std::string, TimeNeeded> machine_times;
    TimeNeeded by_hand;

    const GeneralOperation* find(std::string_view name) const;
    // For a step of a joint or shape at that machine (empty: by hand).
    const TimeNeeded& time_for(const std::string& work, const std::string& step,
                               const std::string& machine) const;
};

// `base` with the file's operations and times in place of its own of the same names, the new ones behind
// them. Empty, with Code::bad_data and the like in `diagnostics`, if the file is not as it should be.
std::optional<OperationTable> read_operations(OperationTable base, const SourceManager& sources, FileId file,
                                              Diagnostics& diagnostics);

}  // namespace rodwright
