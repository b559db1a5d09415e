#include "compiler/evaluate/own_sizes.hpp"

#include <algorithm>
#include <array>

namespace rodwright {

namespace {

constexpr std::size_t faces = 6;

std::size_t unknown_of(const Instance& instance, Face face) {
    return static_cast<std::size_t>(instance.first) + static_cast<std::size_t>(face);
}

// The instance that each unknown is a face of; none for those of containers and rows.
std::vector<std::optional<std::size_t>> owners(const Statements& statements) {
    std::vector<std::optional<std::size_t>> result(statements.unknowns);
    for (std::size_t i = 0; i < statements.instances.size(); ++i) {
        const Instance& instance = statements.instances[i];
        if (instance.master != i) continue;
        for (std::size_t face = 0; face < faces; ++face)
            result[static_cast<std::size_t>(instance.first) + face] = i;
    }
    return result;
}

// How often each extent of the part counts in the line; empty where the line says where the part is, and not
// only how large.
std::optional<std::array<Rational, 3>> extents_in(const LinearEquation& line, const Instance& instance) {
    std::array<Rational, faces> factors{};
    for (const Term& term : line.terms)
        factors[static_cast<std::size_t>(term.unknown) - static_cast<std::size_t>(instance.first)] +=
            term.factor;
    std::array<Rational, 3> result{};
    for (const Axis axis : all_axes) {
        const Rational& low = factors[static_cast<std::size_t>(face_of(axis, false))];
        const Rational& high = factors[static_cast<std::size_t>(face_of(axis, true))];
        if (low + high != 0) return std::nullopt;
        result[static_cast<std::size_t>(axis)] = high;
    }
    return result;
}

}  // namespace

OwnSizes::OwnSizes(Statements& statements) : statements_(statements) {
    const std::vector<std::optional<std::size_t>> owner = owners(statements);
    for (std::size_t i = 0; i < statements.equations.size(); ++i) {
        const std::vector<Term>& terms = statements.equations[i].sum.terms;
        if (terms.empty()) continue;
        const std::optional<std::size_t> first = owner[static_cast<std::size_t>(terms.front().unknown)];
        const bool own = first && std::ranges::all_of(terms, [&](const Term& term) {
                             return owner[static_cast<std::size_t>(term.unknown)] == first;
                         });
        if (own) lines_[*first].push_back(i);
    }
}

void OwnSizes::replace(std::size_t instance, Axis axis, const Rational& size, Span where) {
    const Instance& part = statements_.instances[instance];
    const auto place = static_cast<std::size_t>(axis);
    std::optional<std::size_t> best;
    for (const std::size_t line : lines_[instance]) {
        const auto extents = extents_in(statements_.equations[line].sum, part);
        if (!extents || (*extents)[place] == 0) continue;
        const bool alone = std::ranges::count(*extents, Rational(0)) == 2;
        if (!best || alone) best = line;
        if (alone) break;
    }
    if (!best) return;
    Linear sum{-size,
               {{Unknown{static_cast<std::uint32_t>(unknown_of(part, face_of(axis, true)))}, 1},
                {Unknown{static_cast<std::uint32_t>(unknown_of(part, face_of(axis, false)))}, -1}}};
    statements_.equations[*best] = {std::move(sum), where};
}

}  // namespace rodwright
