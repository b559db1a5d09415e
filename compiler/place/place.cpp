#include "compiler/place/place.hpp"

#include "compiler/place/linear_system.hpp"
#include "compiler/place/report.hpp"

namespace rodwright {

namespace {

std::optional<Rational> value_of(const Linear& sum, const UnknownValues& values) {
    Rational total = sum.constant;
    for (const Term& term : sum.terms) {
        const auto& known = values[static_cast<std::size_t>(term.unknown)];
        if (!known) return std::nullopt;
        total += term.factor * *known;
    }
    return total;
}

template <typename Coordinate>
bool fill(Box& box, const Coordinate& coordinate) {
    bool known = true;
    for (const Face face : all_faces) {
        const std::optional<Rational> value = coordinate(face);
        known = known && value.has_value();
        Vector& corner = is_far(face) ? box.high : box.low;
        corner[axis_of(face)] = value.value_or(Rational(0));
    }
    return known;
}

std::vector<LinearEquation> sums(const Statements& statements) {
    std::vector<LinearEquation> result;
    result.reserve(statements.equations.size());
    for (const Equation& equation : statements.equations) result.push_back(equation.sum);
    return result;
}

}  // namespace

static void report_gave_up(const Statements& statements, Diagnostics& diagnostics) {
    diagnostics.add(
        diagnose(Code::too_large, statements.containers.front().where,
                 "the lines of this design hang on one another in too many ways to be solved")
            .hint("place parts one from the other, and give sizes as numbers where they are known"));
}

Places place(const Statements& statements, Diagnostics& diagnostics) {
    LinearSolution solution = solve(statements.unknowns, sums(statements));
    if (solution.gave_up) report_gave_up(statements, diagnostics);
    report_conflicts(statements, solution, diagnostics);
    report_free(statements, solution, diagnostics);
    Places places;
    places.values = std::move(solution.values);
    for (std::size_t i = 0; i < statements.instances.size(); ++i) {
        Box& box = places.instances.emplace_back();
        places.instance_known.push_back(
            fill(box, [&](Face face) { return value_of(statements.face(i, face), places.values); }));
    }
    for (const Container& container : statements.containers) {
        Box& box = places.containers.emplace_back();
        fill(box, [&](Face face) { return value_of(statements.face(container, face), places.values); });
    }
    report_sizes(statements, places, diagnostics);
    return places;
}

}  // namespace rodwright
