// The general work of every piece and why it is done in its order: stdlib/data/order.yaml.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/graph/stage.hpp"

namespace rodwright {

std::string_view stage_title(Stage stage);  // "Laying out"

// Which parts general work is done to; where there are none the step is left out.
enum class AppliesTo : std::uint8_t { all, solid, sheet, glued, joined, glue, finish };

struct GeneralStep {
    std::string name;  // "flatten_face"
    Stage stage{};
    AppliesTo applies{};
    std::string text;  // `{finish}` stands for the design's finishes
    std::string caution;
};

// One side of a rule: a stage, general work, a step of any joint or shape, or of one of them.
struct StepSelector {
    std::optional<Stage> stage;
    std::string work;  // "*": any joint or shape; empty: general work
    std::string name;
};

struct OrderRule {
    StepSelector before;
    StepSelector after;
    std::string because;
};

struct OrderRules {
    std::string caution;
    std::vector<GeneralStep> steps;
    std::vector<OrderRule> rules;
};

// Empty, with Code::bad_data and the like in `diagnostics`, if the file is not as it should be; a rule that
// names general work that the file does not have is such a mistake.
std::optional<OrderRules> read_order_rules(const SourceManager& sources, FileId file,
                                           Diagnostics& diagnostics);

// Those of stdlib/data/order.yaml as it was built in.
const OrderRules& embedded_order_rules();

}  // namespace rodwright
