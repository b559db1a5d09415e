// Tools, hardware and steps of a definition. Private to compiler/graph/definition_*.cpp.
#pragma once

#include <optional>

#include "compiler/graph/definition_scope.hpp"

namespace rodwright {

// What is needed to write a definition's texts.
struct TextMaker {
    Scope& scope;
    const MemberReferences& members;
    const LengthStyle& style;
    Evaluator& evaluator;

    std::string fill(const Syntax& string) const {
        return fill_text(string, scope, members, style, evaluator);
    }
};

ToolNeed tool_need(const Syntax& needs, Scope& scope, Evaluator& evaluator);
std::optional<Supply> supply(const Syntax& statement, const TextMaker& texts);
StepTemplate step(const Syntax& statement, const TextMaker& texts);

}  // namespace rodwright
