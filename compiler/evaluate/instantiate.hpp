// A design to its statements with values.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "compiler/evaluate/design.hpp"
#include "compiler/evaluate/statements.hpp"

namespace rodwright {

struct DesignOptions {
    std::vector<std::pair<std::string, std::string>> settings;  // parameter and the text of its value
    std::optional<std::string> variant;
};

// Evaluates the design's piece. Rows with an unknown count (`fit`) take it from `counts`; one that is not
// there yet is made with a single part and not laid out, so that its count can be found from what it is to
// fill. The design and the evaluator must outlive the result.
std::unique_ptr<Statements> instantiate(Design& design, Evaluator& evaluator, const DesignOptions& options,
                                        const RowCounts& counts);

}  // namespace rodwright
