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

std::optional<Rational> known(const Linear& value, const Evaluator& evaluator) {
    const Value settled = evaluator.settled(value);
    const auto* quantity = std::get_if<Quantity>(&settled);
    if (quantity == nullptr) return std::nullopt;
    return quantity->value;
}

// The value that the row's block gives to `gap` or `ends`.
std::optional<Rational> given(const Row& row, std::string_view name, Evaluator& evaluator) {
    const Syntax block = row.syntax.find(NodeKind::block);
    if (!block) return std::nullopt;
    for (const Syntax& line : block.all(NodeKind::equation)) {
        if (line.child(0).text() == name) return evaluator.length(line.child(1), *row.scope);
    }
    return std::nullopt;
}

std::optional<long> count_row(const Statements& statements, const Row& row, Evaluator& evaluator) {
    Scope& outer = *row.scope->parent();
    const std::size_t part = statements.declarations[row.declaration].instances.front();
    const std::optional<Linear> from = evaluator.linear_length(row.syntax.child(2), outer);
    const std::optional<Linear> to = evaluator.linear_length(row.syntax.child(3), outer);
    if (!from || !to) return std::nullopt;
    const std::optional<Rational> span = known(*to - *from, evaluator);
    const std::optional<Rational> size = known(
        statements.face(part, face_of(row.axis, true)) - statements.face(part, face_of(row.axis, false)),
        evaluator);
    const std::optional<Rational> gap = given(row, "gap", evaluator);
    const std::optional<Rational> ends = given(row, "ends", evaluator);
    if (!span || !size || !gap || !ends || *size + *gap <= 0) return std::nullopt;
    // span = n size + (n - 1) gap + 2 ends
    const Rational count = round((*span - 2 * *ends + *gap) / (*size + *gap));
    if (count > limits::row_count) {
        evaluator.report(
            diagnose(Code::too_large, row.syntax.span(),
                     fmt::format("more than {} parts would fit into this row", limits::row_count))
                .hint("make the gap or the parts larger"));
        return 1;
    }
    return count < 1 ? 1 : count.get_num().get_si();
}

}  // namespace

RowCounts count_fitted_rows(const Statements& statements, Evaluator& evaluator) {
    RowCounts counts;
    for (const Row& row : statements.rows) {
        const PartDeclaration& part = statements.declarations[row.declaration];
        if (!part.fit) continue;
        const std::optional<long> count = count_row(statements, row, evaluator);
        if (count) {
            counts[row_key(part)] = *count;
            continue;
        }
        evaluator.report(
            diagnose(Code::row_unknowns, row.syntax.span(),
                     fmt::format("how many of `{}` fit cannot be found", part.name))
                .label(part.where, "the count is the unknown")
                .hint("give `gap = ...` and `ends = ...` in the row, and the parts' size along it"));
    }
    return counts;
}

}  // namespace rodwright
