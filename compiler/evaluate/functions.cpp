// The functions of the language, in one table. Everything else that looks like a call is a joint or a shape.
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <numbers>
#include <span>

#include "compiler/evaluate/evaluator.hpp"

namespace rodwright {

namespace {

using Arguments = std::span<const Value>;
// The message of what is wrong with the arguments, or the result.
struct Outcome {
    std::optional<Value> value;
    std::string wrong = {};
    Code code = Code::bad_argument;
};

Outcome wrong(std::string message) {
    return {std::nullopt, std::move(message)};
}

Outcome impossible(std::string message) {
    return {std::nullopt, std::move(message), Code::impossible_arithmetic};
}

const Quantity* quantity(const Value& value) {
    return std::get_if<Quantity>(&value);
}

std::optional<Rational> length(const Value& value) {
    const Quantity* q = quantity(value);
    if (q == nullptr || (!q->is_length() && !(q->is_number() && q->value == 0))) return std::nullopt;
    return q->value;
}

Outcome extreme(Arguments arguments, bool greatest) {
    const Quantity* best = nullptr;
    for (const Value& argument : arguments) {
        const Quantity* next = quantity(argument);
        if (next == nullptr) return wrong("needs numbers or sizes");
        if (best == nullptr) {
            best = next;
            continue;
        }
        const auto order = compare(*next, *best);
        if (!order) return wrong("needs quantities of one kind");
        if (greatest ? *order > 0 : *order < 0) best = next;
    }
    return {Value(*best)};
}

Outcome least(Arguments arguments) {
    return extreme(arguments, false);
}
Outcome greatest(Arguments arguments) {
    return extreme(arguments, true);
}

Outcome absolute(Arguments arguments) {
    const Quantity* q = quantity(arguments[0]);
    if (q == nullptr) return wrong("needs a number or a size");
    return {Value(q->value < 0 ? negate(*q) : *q)};
}

// floor, ceil, round: to a whole number, or with a second argument to a multiple of it.
Outcome to_step(Arguments arguments, Rational (*rounding)(const Rational&)) {
    const Quantity* q = quantity(arguments[0]);
    if (q == nullptr) return wrong("needs a number or a size");
    if (arguments.size() == 1) {
        if (!q->dimension.dimensionless())
            return wrong("needs a second argument: the step to round a size to");
        return {Value(Quantity{rounding(q->value), q->dimension, q->exact})};
    }
    const Quantity* step = quantity(arguments[1]);
    if (step == nullptr || step->dimension != q->dimension || step->value <= 0) {
        return wrong("needs a step above zero, of the same kind as the value");
    }
    const Rational steps = rounding(q->value / step->value);
    return {Value(Quantity{steps * step->value, q->dimension, q->exact && step->exact})};
}

Outcome round_down(Arguments arguments) {
    return to_step(arguments, floor);
}
Outcome round_up(Arguments arguments) {
    return to_step(arguments, ceil);
}
Outcome round_off(Arguments arguments) {
    return to_step(arguments, round);
}

// The exact root of a square, if it is one.
std::optional<Rational> exact_root(const Rational& value) {
    mpz_class numerator;
    mpz_class denominator;
    mpz_sqrt(numerator.get_mpz_t(), value.get_num_mpz_t());
    mpz_sqrt(denominator.get_mpz_t(), value.get_den_mpz_t());
    if (numerator * numerator != value.get_num() || denominator * denominator != value.get_den()) {
        return std::nullopt;
    }
    return Rational(numerator, denominator);
}

Outcome inexact(double value, Dimension dimension) {
    if (!std::isfinite(value) || std::abs(value) > 1e15) return impossible("has no usable result here");
    return {Value(Quantity{from_double(value), dimension, false})};
}

Outcome square_root(Arguments arguments) {
    const Quantity* q = quantity(arguments[0]);
    if (q == nullptr) return wrong("needs a number or a size");
    if (q->value < 0) return impossible("of less than zero does not exist");
    Dimension half = q->dimension;
    for (std::int8_t& power : half.power) {
        if (power % 2 != 0) return wrong("needs a plain number or an area");
        power = static_cast<std::int8_t>(power / 2);
    }
    if (const std::optional<Rational> root = exact_root(q->value)) {
        return {Value(Quantity{*root, half, q->exact})};
    }
    return inexact(std::sqrt(q->to_double()), half);
}

std::optional<double> radians(const Value& value) {
    const Quantity* q = quantity(value);
    if (q == nullptr || q->dimension != Dimension::of(Base::angle)) return std::nullopt;
    return q->to_double() * std::numbers::pi / 180.0;
}

// Sine of a multiple of 30 degrees where it is rational: 0, 1/2, 1 and their negatives. Empty elsewhere.
std::optional<Rational> exact_sine(const Rational& degrees) {
    Rational turn = degrees - floor(degrees / 360) * 360;
    const bool lower = turn >= 180;
    if (lower) turn -= 180;
    Rational sine;
    if (turn == 0) {
        sine = 0;
    } else if (turn == 90) {
        sine = 1;
    } else if (turn == 30 || turn == 150) {
        sine = ratio(1, 2);
    } else {
        return std::nullopt;
    }
    return lower ? Rational(-sine) : sine;
}

Outcome trigonometry(const Value& argument, const std::optional<Rational>& exact,
                     double (*function)(double)) {
    const Quantity* q = quantity(argument);
    if (exact && q->exact) return {Value(Quantity::number(*exact))};
    return inexact(function(*radians(argument)), Dimension::number());
}

Outcome sine(Arguments arguments) {
    if (!radians(arguments[0])) return wrong("needs an angle, as in `14deg`");
    return trigonometry(arguments[0], exact_sine(quantity(arguments[0])->value), std::sin);
}

Outcome cosine(Arguments arguments) {
    if (!radians(arguments[0])) return wrong("needs an angle, as in `14deg`");
    return trigonometry(arguments[0], exact_sine(quantity(arguments[0])->value + 90), std::cos);
}

Outcome tangent(Arguments arguments) {
    if (!radians(arguments[0])) return wrong("needs an angle, as in `14deg`");
    const Rational degrees = quantity(arguments[0])->value;
    const Rational turn = degrees - floor(degrees / 180) * 180;
    if (turn == 90) return impossible("of a right angle does not exist");
    std::optional<Rational> exact;
    if (turn == 0) exact = 0;
    if (turn == 45) exact = 1;
    if (turn == 135) exact = -1;
    return trigonometry(arguments[0], exact, std::tan);
}

Outcome angle_of(Arguments arguments) {
    const Quantity* rise = quantity(arguments[0]);
    const Quantity* run = quantity(arguments[1]);
    if (rise == nullptr || run == nullptr || rise->dimension != run->dimension) {
        return wrong("needs two quantities of one kind: rise and run");
    }
    if (rise->value == 0 && run->value == 0) return impossible("of zero and zero does not exist");
    if (rise->value == 0 && run->value > 0) return {Value(Quantity{0, Dimension::of(Base::angle), true})};
    const double degrees = std::atan2(rise->to_double(), run->to_double()) * 180.0 / std::numbers::pi;
    return inexact(degrees, Dimension::of(Base::angle));
}

Outcome box(Arguments arguments) {
    std::array<Rational, 3> sizes;
    for (std::size_t i = 0; i < 3; ++i) {
        const std::optional<Rational> size = length(arguments[i]);
        if (!size) return wrong("needs three lengths: thickwise, widthwise and inward");
        sizes[i] = *size;
    }
    return {Value(BodyValue{BodyForm::box, sizes[0], sizes[1], sizes[2], {}})};
}

Outcome cylinder(Arguments arguments) {
    const std::optional<Rational> diameter = length(arguments[0]);
    const std::optional<Rational> depth = length(arguments[1]);
    if (!diameter || !depth) return wrong("needs two lengths: diameter and depth");
    return {Value(BodyValue{BodyForm::cylinder, *diameter, *diameter, *depth, {}})};
}

Outcome prism(Arguments arguments) {
    const auto* profile = std::get_if<ProfileValue>(&arguments[0]);
    const std::optional<Rational> depth = length(arguments[1]);
    if (profile == nullptr || !depth) return wrong("needs a profile (polygon or trapezoid) and a length");
    return {Value(BodyValue{BodyForm::prism, 0, 0, *depth, profile->corners})};
}

Outcome polygon(Arguments arguments) {
    ProfileValue result;
    for (const Value& argument : arguments) {
        const auto* point = std::get_if<PointValue>(&argument);
        if (point == nullptr || point->at.size() != 2) return wrong("needs points of two lengths: (x, y)");
        result.corners.push_back({point->at[0], point->at[1]});
    }
    return {Value(std::move(result))};
}

Outcome trapezoid(Arguments arguments) {
    const std::optional<Rational> narrow = length(arguments[0]);
    const std::optional<Rational> wide = length(arguments[1]);
    const std::optional<Rational> height = length(arguments[2]);
    if (!narrow || !wide || !height)
        return wrong("needs three lengths: at the plane, at the far side, height");
    const Rational near_half = *narrow / 2;
    const Rational far_half = *wide / 2;
    return {Value(ProfileValue{{{-near_half, 0}, {near_half, 0}, {far_half, *height}, {-far_half, *height}}}),
            ""};
}

struct Function {
    std::string_view name;
    std::size_t fewest;
    std::size_t most;
    Outcome (*apply)(Arguments);
};

constexpr std::array<Function, 16> functions = {{
    {"min", 1, 64, least},
    {"max", 1, 64, greatest},
    {"abs", 1, 1, absolute},
    {"floor", 1, 2, round_down},
    {"ceil", 1, 2, round_up},
    {"round", 1, 2, round_off},
    {"sqrt", 1, 1, square_root},
    {"sin", 1, 1, sine},
    {"cos", 1, 1, cosine},
    {"tan", 1, 1, tangent},
    {"atan2", 2, 2, angle_of},
    {"box", 3, 3, box},
    {"cylinder", 2, 2, cylinder},
    {"prism", 2, 2, prism},
    {"polygon", 3, 64, polygon},
    {"trapezoid", 3, 3, trapezoid},
}};

const Function* find_function(std::string_view name) {
    for (const Function& function : functions) {
        if (function.name == name) return &function;
    }
    return nullptr;
}

// The values of a call's arguments; empty if one of them has none, or has a name.
std::optional<std::vector<Value>> argument_values(const Syntax& call, Scope& scope, Evaluator& evaluator) {
    std::vector<Value> values;
    bool complete = true;
    for (const Syntax& argument : call.all(NodeKind::argument)) {
        const std::vector<Syntax> parts = argument.children();
        if (parts.size() != 1) {
            evaluator.report(
                diagnose(Code::bad_argument, argument.span(), "arguments of a function have no names"));
            return std::nullopt;
        }
        std::optional<Value> value = evaluator.evaluate(parts[0], scope);
        if (value) values.push_back(std::move(*value));
        complete = complete && value.has_value();
    }
    if (!complete) return std::nullopt;
    return values;
}

bool has_unknown(const std::vector<Value>& values) {
    for (const Value& value : values) {
        if (std::holds_alternative<Linear>(value)) return true;
    }
    return false;
}

std::string count_words(const Function& function) {
    if (function.fewest == function.most) return fmt::format("{}", function.fewest);
    return fmt::format("{} to {}", function.fewest, function.most);
}

}  // namespace

std::vector<std::string> function_names() {
    std::vector<std::string> names;
    for (const Function& function : functions) names.emplace_back(function.name);
    return names;
}

std::optional<Value> call_function(const Syntax& call, Scope& scope, Evaluator& evaluator) {
    const Syntax name = call.child(0);
    const Function* function = find_function(name.text());
    if (function == nullptr) {
        Diagnostic diagnostic =
            diagnose(Code::unknown_name, name.span(), fmt::format("there is no function `{}`", name.text()));
        const std::string near = nearest_name(name.text(), function_names());
        if (!near.empty()) diagnostic.help = fmt::format("did you mean `{}`?", near);
        evaluator.report(std::move(diagnostic));
        return std::nullopt;
    }
    const std::optional<std::vector<Value>> values = argument_values(call, scope, evaluator);
    if (!values) return std::nullopt;
    if (values->size() < function->fewest || values->size() > function->most) {
        evaluator.report(
            diagnose(Code::bad_argument, call.span(),
                     fmt::format("`{}` takes {} argument{}, found {}", function->name, count_words(*function),
                                 function->most == 1 ? "" : "s", values->size())));
        return std::nullopt;
    }
    if (has_unknown(*values)) {
        evaluator.report(
            diagnose(Code::not_linear, call.span(),
                     fmt::format("`{}` of a size that is not known before placement", function->name))
                .hint("use parameters and lets with known values in it"));
        return std::nullopt;
    }
    Outcome outcome = function->apply(*values);
    if (outcome.value) return std::move(outcome.value);
    evaluator.report(
        diagnose(outcome.code, call.span(), fmt::format("`{}` {}", function->name, outcome.wrong)));
    return std::nullopt;
}

}  // namespace rodwright
