// What can be decided once everything has its place: requirements, copies taken for one another, counts of
// rows.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "compiler/evaluate/part_references.hpp"
#include "compiler/limits.hpp"
#include "compiler/place/place.hpp"

namespace rodwright {

namespace {

bool agree(const std::vector<Linear>& values, const Evaluator& evaluator) {
    const Value first = evaluator.settled(values.front());
    const auto* expected = std::get_if<Quantity>(&first);
    return expected == nullptr || std::ranges::all_of(values, [&](const Linear& value) {
               const Value other = evaluator.settled(value);
               const auto* quantity = std::get_if<Quantity>(&other);
               return quantity == nullptr || quantity->value == expected->value;
           });
}

}  // namespace

void check_assumptions(const Statements& statements, Evaluator& evaluator) {
    std::map<std::tuple<std::size_t, Hands, std::string>, bool> known;  // many lines assume the same
    for (const AssumedSame& assumption : statements.assumptions) {
        const auto [found, added] = known.try_emplace(
            {assumption.copies.declaration, assumption.copies.hands, assumption.name}, true);
        if (added) found->second = agree(assumed_values(statements, assumption), evaluator);
        if (found->second) continue;
        evaluator.report(
            diagnose(Code::which_copy, assumption.at.span(),
                     "the copies of the row differ here; which one is meant?")
                .hint("choose one by number, as in `slat[3].front`, or `slat[first]`, `slat[last]`"));
    }
}

void check_requirements(const Statements& statements, Evaluator& evaluator) {
    for (const auto& [requirement, scope] : statements.requirements) {
        const std::optional<bool> holds = evaluator.condition(requirement.child(0), *scope);
        if (!holds || *holds) continue;
        const Syntax text = requirement.child(1);
        const std::string message = text ? unquoted(text) : "a requirement of the design does not hold";
        Diagnostic diagnostic = diagnose(Code::requirement_failed, requirement.child(0).span(), message);
        const Syntax condition = requirement.child(0);
        if (condition.kind() == NodeKind::binary) {
            const std::optional<Value> left = evaluator.evaluate(condition.child(0), *scope);
            const auto* quantity = left ? std::get_if<Quantity>(&*left) : nullptr;
            if (quantity != nullptr) {
                diagnostic.primary_text =
                    fmt::format("the left side is {}", format_quantity(*quantity, statements.style));
            }
        }
        evaluator.report(std::move(diagnostic));
    }
}

void check_unused(Statements& statements, Evaluator& evaluator) {
    for (Scope& scope : statements.scopes) {
        for (const auto& [name, definition] : scope.here()) {
            if (definition.state != Definition::State::waiting) continue;
            evaluator.value_of(*scope.find_here(name), name, definition.name_span);
        }
    }
}

namespace {

// The factor of an unknown, which is left out of the sum from then on.
Rational take_out(Linear& sum, Unknown unknown) {
    Rational factor = 0;
    for (const Term& term : sum.terms) {
        if (term.unknown == unknown) factor += term.factor;
    }
    std::erase_if(sum.terms, [&](const Term& term) { return term.unknown == unknown; });
    return factor;
}

std::optional<Rational> known(const Linear& value, const Evaluator& evaluator) {
    const Value settled = evaluator.settled(value);
    const auto* quantity = std::get_if<Quantity>(&settled);
    if (quantity == nullptr) return std::nullopt;
    return quantity->value;
}

// The value that the row's block gives to `gap` or `ends`; a name of the two without a value is an unknown in
// it.
std::optional<Linear> given(const Row& row, std::string_view name, Evaluator& evaluator) {
    const Syntax block = row.syntax.find(NodeKind::block);
    if (!block) return std::nullopt;
    for (const Syntax& line : block.all(NodeKind::equation)) {
        if (line.child(0).text() == name) return evaluator.linear_length(line.child(1), *row.scope);
    }
    return std::nullopt;
}

// What is known of a row whose count is not: span = n size + (n - 1) gap + 2 ends, where the ends may hang on
// the gap, as in `ends = gap / 2`: ends = fixed + share gap.
struct RowSizes {
    Rational span;
    Rational size;
    Rational gap;  // that is wanted
    Rational fixed;
    Rational share;

    // With the wanted gap; not a whole number.
    Rational wanted_count() const { return (span - 2 * (fixed + share * gap) + gap) / (size + gap); }
    // Closed up, without any gap.
    Rational most() const { return floor((span - 2 * fixed) / size); }
    // One part has no gap beside it that could make up for what fixed ends leave.
    bool one_disagrees() const { return share == 0 && size + 2 * fixed != span; }
};

std::optional<RowSizes> row_sizes(const Statements& statements, const Row& row, Evaluator& evaluator) {
    Scope& outer = *row.scope->parent();
    const std::size_t part = statements.declarations[row.declaration].instances.front();
    const std::optional<Linear> from = evaluator.linear_length(row.syntax.child(2), outer);
    const std::optional<Linear> to = evaluator.linear_length(row.syntax.child(3), outer);
    const std::optional<Linear> wanted = given(row, "gap", evaluator);
    std::optional<Linear> ends = given(row, "ends", evaluator);
    if (!from || !to || !wanted || !ends) return std::nullopt;
    const Rational share = take_out(*ends, row.gap);
    const std::optional<Rational> span = known(*to - *from, evaluator);
    const std::optional<Rational> size = known(
        statements.face(part, face_of(row.axis, true)) - statements.face(part, face_of(row.axis, false)),
        evaluator);
    const std::optional<Rational> gap = known(*wanted, evaluator);
    const std::optional<Rational> fixed = known(*ends, evaluator);
    if (!span || !size || !gap || !fixed || *size <= 0 || *size + *gap <= 0) return std::nullopt;
    return RowSizes{*span, *size, *gap, *fixed, share};
}

Diagnostic one_disagrees(const Statements& statements, const Row& row, const RowSizes& sizes) {
    const PartDeclaration& part = statements.declarations[row.declaration];
    const auto shown = [&](const Rational& length) { return format_length(length, statements.style); };
    const Rational needed = sizes.size + 2 * sizes.fixed;
    return diagnose(Code::row_unknowns, row.syntax.span(),
                    fmt::format("one `{}` is the most that fits, and with its ends it takes {}, not the {} "
                                "that the row is long",
                                part.name, shown(needed), shown(sizes.span)))
        .label(part.where, fmt::format("{} along `{}`", shown(sizes.size), axis_name(row.axis)))
        .note("one part has no gap beside it that could make up the difference")
        .hint("write `ends = gap` to have it in the middle, or give a smaller `gap`, or a count");
}

Diagnostic count_unknown(const Statements& statements, const Row& row) {
    const PartDeclaration& part = statements.declarations[row.declaration];
    return diagnose(Code::row_unknowns, row.syntax.span(),
                    fmt::format("how many of `{}` fit cannot be found", part.name))
        .label(part.where, "the count is the unknown")
        .hint("give `gap = ...` and `ends = ...` in the row, and the parts' size along it");
}

Diagnostic too_many_fit(const Row& row) {
    return diagnose(Code::too_large, row.syntax.span(),
                    fmt::format("more than {} parts would fit into this row", limits::row_count))
        .hint("make the gap or the parts larger");
}

// Empty, and reported, if the row cannot be laid out.
std::optional<long> count_row(const Statements& statements, const Row& row, Evaluator& evaluator) {
    const std::size_t errors = evaluator.diagnostics().errors();
    const std::optional<RowSizes> sizes = row_sizes(statements, row, evaluator);
    if (!sizes) {
        // A line without a value has been reported for what it is.
        if (evaluator.diagnostics().errors() == errors) evaluator.report(count_unknown(statements, row));
        return std::nullopt;
    }
    const Rational count = std::min(round(sizes->wanted_count()), sizes->most());
    if (count > limits::row_count) {
        evaluator.report(too_many_fit(row));
        return 1;
    }
    if (count > 1) return count.get_num().get_si();
    if (!sizes->one_disagrees()) return 1;
    evaluator.report(one_disagrees(statements, row, *sizes));
    return std::nullopt;
}

}  // namespace

RowCounts count_fitted_rows(const Statements& statements, Evaluator& evaluator) {
    RowCounts counts;
    for (const Row& row : statements.rows) {
        const PartDeclaration& part = statements.declarations[row.declaration];
        if (!part.fit) continue;
        if (const std::optional<long> count = count_row(statements, row, evaluator))
            counts[row_key(part)] = *count;
    }
    return counts;
}

}  // namespace rodwright
