// Why work is done in its order: stdlib/data/order.yaml, and the maker's own `order.yaml` added to it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "compiler/workplan/data/operation_table.hpp"

namespace rodwright {

// One side of a rule: a stage, general work, a step of any joint or shape, or of one of them.
struct WorkSelector {
    std::optional<Stage> stage;
    std::string work;  // "*": any joint or shape; empty: general work
    std::string name;
    friend bool operator==(const WorkSelector&, const WorkSelector&) = default;
};

// What has to pass between the two: the glue's clamp or cure time, the finish's until the next coat or until
// it is hard.
enum class WaitFor : std::uint8_t { nothing, clamp, cure, recoat, cured };

// Holds for every two that are done to the same part; `others`: for every two that are not, and belong to no
// joint in common. Where both sides are the same, the earlier one comes first.
struct OrderRule {
    WorkSelector before;
    WorkSelector after;
    std::string because;
    WaitFor wait{};
    // Of the maker's file. The library's rules give way where a definition has put its work into a later
    // stage.
    bool own = false;
    bool others = false;
    bool firm = false;  // holds against the stages too: the later work is then of the earlier one's stage
};

// When a line is added to an operation: both of a mirrored pair at a machine; several alike at a machine; a
// setting that is tried first; laying out more than one part.
enum class NoteWhen : std::uint8_t { mirrored, batch, test_piece, mates };

struct WorkNote {
    NoteWhen when{};
    std::string text;
};

struct OrderRules {
    std::vector<OrderRule> rules;
    std::vector<WorkNote> notes;
};

// "round.form", "any fit", "laying out"
std::string selector_words(const WorkSelector& selector);

// `base` with the file's rules and notes after its own. Empty, with Code::bad_data and the like in
// `diagnostics`, if the file is not as it should be; a rule that names general work that the table does not
// have is such a mistake.
std::optional<OrderRules> read_order_rules(OrderRules base, const OperationTable& operations,
                                           const SourceManager& sources, FileId file,
                                           Diagnostics& diagnostics);

}  // namespace rodwright
