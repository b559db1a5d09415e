// Tools, hardware and steps of a definition. Private to compiler/graph/definition_*.cpp.
#pragma once

#include <optional>

#include "compiler/graph/definition_scope.hpp"

namespace rodwright {

// What is needed to write a definition's texts.
struct TextMaker {
    Scope& scope;
    const MemberReferences& members;
    Evaluator& evaluator;

    FilledText fill(const Syntax& string) const { return fill_text(string, scope, members, evaluator); }
};

// They add to `named` the parameters and lets that are named for the maker: in texts, settings, sizes of
// tools.
ToolNeed tool_need(const Syntax& needs, const TextMaker& texts, std::set<std::string>& named);
std::optional<Supply> supply(const Syntax& statement, const TextMaker& texts, std::set<std::string>& named);
StepTemplate step(const Syntax& statement, const TextMaker& texts, std::set<std::string>& named);

}  // namespace rodwright
