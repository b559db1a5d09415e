// Faces and sizes of parts by name: `left`, `leg[front].back`, `piece.wide`, `till.top`.
#pragma once

#include <optional>
#include <variant>

#include "compiler/evaluate/statements.hpp"

namespace rodwright {

class PartReferences : public References {
  public:
    // References written in `container`. A bare face is one of `instance` where there is one, else of `own`.
    PartReferences(Statements& statements, const Container& container, const Container& own)
        : statements_(statements), container_(container), own_(own) {}
    PartReferences(Statements& statements, const Container& container, std::size_t instance)
        : statements_(statements), container_(container), own_(container), instance_(instance) {}

    std::optional<Value> own(std::string_view name, const Syntax& at, Evaluator& evaluator) override;
    std::optional<Value> member(const Syntax& at, Scope& scope, Evaluator& evaluator) override;
    std::vector<std::string> names() const override;

    // `leg`, `leg[front]`, `till.side[left]`, with a face `leg.front` where `with_face`: for joins and loads.
    std::optional<PartPattern> pattern(const Syntax& at, Scope& scope, Evaluator& evaluator);

  private:
    using Target = std::variant<const Container*, PartPattern>;

    Statements& statements_;
    const Container& container_;
    const Container& own_;
    std::optional<std::size_t> instance_;

    std::optional<Target> target(const Syntax& at, Scope& scope, Evaluator& evaluator);
    std::optional<Target> named(const Syntax& name, const Container& from, bool enclosing,
                                Evaluator& evaluator);
    std::optional<Target> copy(const Syntax& at, Scope& scope, Evaluator& evaluator);
    bool add_words(PartPattern& pattern, const Syntax& at, const std::vector<Syntax>& words,
                   Evaluator& evaluator);
    void fill_from_context(PartPattern& pattern) const;
    std::optional<Value> of_part(const PartPattern& pattern, const Syntax& at, std::string_view name,
                                 Evaluator& evaluator);
};

// The instances that a pattern leaves possible, in their order.
std::vector<std::size_t> matching(const Statements& statements, const PartPattern& pattern);

// What an assumption took to be the same, for each of the copies.
std::vector<Linear> assumed_values(const Statements& statements, const AssumedSame& assumption);

}  // namespace rodwright
