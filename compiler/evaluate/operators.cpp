#include <fmt/format.h>

#include <algorithm>

#include "compiler/evaluate/evaluator.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

namespace {

using Pair = std::pair<const Value&, const Value&>;

Diagnostic mismatch(const Syntax& expression, const Pair& pair, std::string_view doing) {
    return diagnose(Code::dimension_mismatch, expression.span(),
                    fmt::format("cannot {} {} and {}", doing, describe(pair.first), describe(pair.second)))
        .label(expression.child(0).span(), "this is " + describe(pair.first))
        .label(expression.child(1).span(), "this is " + describe(pair.second));
}

std::string_view doing(Operator op) {
    switch (op) {
        case Operator::add:
            return "add";
        case Operator::subtract:
            return "subtract";
        case Operator::multiply:
            return "multiply";
        case Operator::divide:
            return "divide";
        default:
            return "compare";
    }
}

std::optional<Value> quantities(const Syntax& expression, Operator op, const Quantity& a, const Quantity& b,
                                Diagnostics& diagnostics) {
    std::optional<Quantity> result;
    switch (op) {
        case Operator::add:
            result = add(a, b);
            break;
        case Operator::subtract:
            result = subtract(a, b);
            break;
        case Operator::multiply:
            result = multiply(a, b);
            break;
        default:
            result = divide(a, b);
            break;
    }
    if (result) return Value(std::move(*result));
    if (op == Operator::divide && b.value == 0) {
        diagnostics.add(diagnose(Code::impossible_arithmetic, expression.span(), "division by zero")
                            .label(expression.child(1).span(), "this is zero"));
        return std::nullopt;
    }
    const bool same = a.dimension == b.dimension || op == Operator::multiply || op == Operator::divide;
    if (same) {
        diagnostics.add(
            diagnose(Code::impossible_arithmetic, expression.span(), "the result is too large to hold"));
        return std::nullopt;
    }
    Diagnostic diagnostic = mismatch(expression, {Value(a), Value(b)}, doing(op));
    if (a.is_length() != b.is_length() && (a.is_number() || b.is_number())) {
        diagnostic.help = "a length needs a unit, as in `3/4\"` or `19mm`";
    }
    diagnostics.add(std::move(diagnostic));
    return std::nullopt;
}

// A known length beside an unknown one.
std::optional<Linear> as_linear(const Value& value) {
    if (const auto* linear = std::get_if<Linear>(&value)) return *linear;
    const auto* quantity = std::get_if<Quantity>(&value);
    if (quantity == nullptr || (!quantity->is_length() && quantity->value != 0)) return std::nullopt;
    return Linear{quantity->value, {}};
}

const Quantity* as_factor(const Value& value) {
    const auto* quantity = std::get_if<Quantity>(&value);
    return quantity != nullptr && quantity->dimension.dimensionless() ? quantity : nullptr;
}

bool within_limits(const Linear& sum) {
    const auto large = [](const Rational& value) {
        return mpz_sizeinbase(value.get_num_mpz_t(), 2) > limits::value_bits ||
               mpz_sizeinbase(value.get_den_mpz_t(), 2) > limits::value_bits;
    };
    if (sum.terms.size() > limits::sum_terms || large(sum.constant)) return false;
    return std::none_of(sum.terms.begin(), sum.terms.end(),
                        [&](const Term& term) { return large(term.factor); });
}

std::optional<Value> bounded(const Syntax& expression, Linear sum, Diagnostics& diagnostics) {
    if (within_limits(sum)) return Value(std::move(sum));
    diagnostics.add(diagnose(Code::too_large, expression.span(), "this sum of faces and sizes is too large")
                        .note(fmt::format("at most {} faces can be summed in one value", limits::sum_terms)));
    return std::nullopt;
}

std::optional<Value> linears(const Syntax& expression, Operator op, const Value& a, const Value& b,
                             Diagnostics& diagnostics) {
    if (op == Operator::add || op == Operator::subtract) {
        std::optional<Linear> left = as_linear(a);
        const std::optional<Linear> right = as_linear(b);
        if (left && right) {
            return bounded(expression,
                           op == Operator::add ? std::move(*left) + *right : std::move(*left) - *right,
                           diagnostics);
        }
        diagnostics.add(mismatch(expression, {a, b}, doing(op)));
        return std::nullopt;
    }
    const bool left_unknown = std::holds_alternative<Linear>(a);
    const Quantity* factor = as_factor(left_unknown ? b : a);
    const bool may = op == Operator::multiply || (op == Operator::divide && left_unknown);
    if (factor == nullptr || !may || (op == Operator::divide && factor->value == 0)) {
        diagnostics.add(
            diagnose(Code::not_linear, expression.span(),
                     fmt::format("cannot {} with a size that is not known before placement", doing(op)))
                .hint("relate faces by sums, differences and multiples with plain numbers"));
        return std::nullopt;
    }
    const Linear& unknown = std::get<Linear>(left_unknown ? a : b);
    return bounded(expression,
                   unknown * (op == Operator::divide ? Rational(1 / factor->value) : factor->value),
                   diagnostics);
}

bool is_arithmetic(Operator op) {
    return op == Operator::add || op == Operator::subtract || op == Operator::multiply ||
           op == Operator::divide;
}

bool holds(Operator op, std::strong_ordering order) {
    switch (op) {
        case Operator::less:
            return order < 0;
        case Operator::less_equal:
            return order <= 0;
        case Operator::greater:
            return order > 0;
        case Operator::greater_equal:
            return order >= 0;
        case Operator::equal:
            return order == 0;
        default:
            return order != 0;
    }
}

// `==` and `!=` between any two values that are not both quantities: equal only if both are the same word,
// text, none or yes/no.
std::optional<bool> same(const Value& a, const Value& b) {
    if (std::holds_alternative<Linear>(a) || std::holds_alternative<Linear>(b)) return std::nullopt;
    if (a.index() != b.index()) return false;
    if (const auto* word = std::get_if<Word>(&a)) return *word == std::get<Word>(b);
    if (const auto* text = std::get_if<Text>(&a)) return *text == std::get<Text>(b);
    if (const auto* yes = std::get_if<bool>(&a)) return *yes == std::get<bool>(b);
    if (std::holds_alternative<Nothing>(a)) return true;
    return std::nullopt;
}

std::optional<Value> comparison(const Syntax& expression, Operator op, const Value& a, const Value& b,
                                Diagnostics& diagnostics) {
    const auto* left = std::get_if<Quantity>(&a);
    const auto* right = std::get_if<Quantity>(&b);
    if (left != nullptr && right != nullptr) {
        std::optional<std::strong_ordering> order = compare(*left, *right);
        if (!order && (left->value == 0 || right->value == 0)) order = cmp(left->value, right->value) <=> 0;
        if (order) return holds(op, *order);
    } else if (op == Operator::equal || op == Operator::not_equal) {
        if (const std::optional<bool> equal = same(a, b)) return *equal == (op == Operator::equal);
    }
    diagnostics.add(mismatch(expression, {a, b}, "compare"));
    return std::nullopt;
}

}  // namespace

std::optional<Value> combine(const Syntax& expression, const Value& left, const Value& right,
                             Diagnostics& diagnostics) {
    const Operator op = expression.tree->op(expression.node);
    if (!is_arithmetic(op)) return comparison(expression, op, left, right, diagnostics);
    if (std::holds_alternative<Linear>(left) || std::holds_alternative<Linear>(right)) {
        return linears(expression, op, left, right, diagnostics);
    }
    const auto* a = std::get_if<Quantity>(&left);
    const auto* b = std::get_if<Quantity>(&right);
    if (a != nullptr && b != nullptr) return quantities(expression, op, *a, *b, diagnostics);
    diagnostics.add(mismatch(expression, {left, right}, doing(op)));
    return std::nullopt;
}

}  // namespace rodwright
