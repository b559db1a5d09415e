// Names inside a definition: its parameters, its members, and words. Private to
// compiler/graph/definition_*.cpp.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/graph/definition_use.hpp"
#include "compiler/graph/phrase.hpp"

namespace rodwright {

class MemberReferences : public References {
  public:
    // Notes in `reads` what sizes are asked for.
    MemberReferences(const std::vector<MemberView>& members, Scope& scope, std::vector<SizeRead>& reads)
        : members_(members), scope_(scope), reads_(reads) {}

    // A bare name that the definition does not define is a word.
    std::optional<Value> own(std::string_view name, const Syntax& at, Evaluator& evaluator) override;
    std::optional<Value> member(const Syntax& at, Scope& scope, Evaluator& evaluator) override;
    std::vector<std::string> names() const override { return {}; }

    std::optional<std::size_t> index(std::string_view role) const;
    const MemberView& operator[](std::size_t member) const { return members_[member]; }
    std::optional<Rational> size(std::size_t member, std::string_view name) const;

  private:
    const std::vector<MemberView>& members_;
    Scope& scope_;
    std::vector<SizeRead>& reads_;
};

// The parameters of a definition in reading order: `name = expression` at the top of its body.
std::vector<Syntax> parameters_of(const Syntax& definition);

// The call's arguments. Reports those that fit no parameter or have no value, and then is empty.
std::optional<std::vector<GivenArgument>> given_arguments(const DefinitionCall& call, Evaluator& evaluator);

// Replaces the defaults in `scope` by arguments. Reports those of another kind than the default, and
// parameters that must be given; false if it cannot go on.
bool bind_arguments(const DefinitionCall& call, const std::vector<GivenArgument>& arguments, Scope& scope,
                    std::vector<SizeRead>& reads, Evaluator& evaluator);

// A value within a text: a quantity, or its words.
Phrase::Word as_said(const Value& value);

// A text with what it names in braces filled in: `{name}`, `{member}`, `{member.size}`.
struct FilledText {
    Phrase phrase;
    std::set<std::string> values;  // the parameters and lets that it names
};

FilledText fill_text(const Syntax& string, Scope& scope, const MemberReferences& members,
                     Evaluator& evaluator);

}  // namespace rodwright
