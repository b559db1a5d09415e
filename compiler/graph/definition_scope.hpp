// Names inside a definition: its parameters, its members, and words. Private to
// compiler/graph/definition_*.cpp.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compiler/graph/definition_use.hpp"

namespace rodwright {

class MemberReferences : public References {
  public:
    MemberReferences(const std::vector<MemberView>& members, Scope& scope)
        : members_(members), scope_(scope) {}

    // A bare name that the definition does not define is a word.
    std::optional<Value> own(std::string_view name, const Syntax& at, Evaluator& evaluator) override;
    std::optional<Value> member(const Syntax& at, Scope& scope, Evaluator& evaluator) override;
    std::vector<std::string> names() const override { return {}; }

    const MemberView* find(std::string_view role) const;
    std::optional<std::size_t> index(std::string_view role) const;

  private:
    const std::vector<MemberView>& members_;
    Scope& scope_;
};

// The parameters of a definition in reading order: `name = expression` at the top of its body.
std::vector<Syntax> parameters_of(const Syntax& definition);

// Replaces the defaults in `scope` by the call's arguments, evaluated where the call stands. Reports
// arguments that fit no parameter and parameters that must be given; false if it cannot go on.
bool bind_arguments(const DefinitionCall& call, Scope& scope, Evaluator& evaluator);

// `{name}`, `{member}`, `{member.size}` filled in.
std::string fill_text(const Syntax& string, Scope& scope, const MemberReferences& members,
                      const LengthStyle& style, Evaluator& evaluator);

}  // namespace rodwright
