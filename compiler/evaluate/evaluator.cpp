#include "compiler/evaluate/evaluator.hpp"

#include <fmt/format.h>

#include <utility>

#include "compiler/limits.hpp"

namespace rodwright {

std::optional<Value> Evaluator::evaluate(const Syntax& expression, Scope& scope) {
    // The grammar bounds nesting within one expression; chains of definitions are bounded here.
    if (depth_ >= limits::tree_depth) {
        report(diagnose(Code::too_large, expression.span(),
                        fmt::format("definitions depend on each other more than {} deep", limits::tree_depth))
                   .hint("give one of them a value that depends on nothing"));
        return std::nullopt;
    }
    if (!spend(1, expression.span())) return std::nullopt;
    ++depth_;
    std::optional<Value> result = dispatch(expression, scope);
    --depth_;
    if (!result || !spend(steps_of(*result), expression.span())) return std::nullopt;
    return result;
}

bool Evaluator::spend(std::size_t steps, Span at) {
    if (*effort_ <= limits::evaluating) *effort_ += steps;
    if (*effort_ <= limits::evaluating) return true;
    if (std::exchange(reports_effort_, false)) {
        report(diagnose(Code::too_large, at,
                        fmt::format("with all its copies this design takes more than {} steps to evaluate",
                                    limits::evaluating))
                   .hint("make rows shorter, and simpler what is written in their parts, joints and shapes"));
    }
    return false;
}

std::optional<Value> Evaluator::dispatch(const Syntax& expression, Scope& scope) {
    switch (expression.kind()) {
        case NodeKind::number:
            return number(expression);
        case NodeKind::name:
            return name(expression, scope);
        case NodeKind::word:
            return Word{std::string(expression.text())};
        case NodeKind::string:
            return Text{unquoted(expression)};
        case NodeKind::none:
            return Nothing{};
        case NodeKind::unary:
            return unary(expression, scope);
        case NodeKind::binary:
            return binary(expression, scope);
        case NodeKind::choice:
            return choice(expression, scope);
        case NodeKind::call:
            return call_function(expression, scope, *this);
        case NodeKind::nearest:
            return nearest_tool(expression, scope);
        case NodeKind::point:
            return point(expression, scope);
        case NodeKind::member: {
            References* references = scope.references();
            if (references != nullptr) return references->member(expression, scope, *this);
            break;
        }
        case NodeKind::given:
            report(diagnose(Code::bad_argument, expression.span(), "`given` has no value of its own"));
            return std::nullopt;
        case NodeKind::broken:
            return std::nullopt;
        default:
            break;
    }
    report(diagnose(Code::wrong_kind_of_value, expression.span(), "this has no value here")
               .hint("name a face or size of it, such as `.left` or `.wide`"));
    return std::nullopt;
}

std::optional<Value> Evaluator::number(const Syntax& expression) {
    std::optional<Quantity> quantity = parse_quantity(expression.text());
    if (quantity) return Value(std::move(*quantity));
    report(diagnose(Code::bad_number, expression.span(),
                    fmt::format("`{}` is not a number that can be read", expression.text()))
               .hint(fmt::format("units are {}; at most {} digits", unit_words(), limits::number_digits)));
    return std::nullopt;
}

std::optional<Value> Evaluator::name(const Syntax& expression, Scope& scope) {
    const std::string_view text = expression.text();
    References* references = scope.references();
    if (references != nullptr) {
        if (std::optional<Value> own = references->own(text, expression, *this)) return own;
    }
    if (Definition* definition = scope.find(text)) return value_of(*definition, text, expression.span());
    Diagnostic diagnostic =
        diagnose(Code::unknown_name, expression.span(), fmt::format("`{}` is not defined here", text));
    if (diagnostics_.full()) {
        report(std::move(diagnostic));
        return std::nullopt;
    }
    std::vector<std::string> known = scope.names();
    if (references != nullptr) {
        for (std::string& more : references->names()) known.push_back(std::move(more));
    }
    const std::string near = nearest_name(text, std::move(known));
    diagnostic.help = near.empty() ? fmt::format("define it: `let {} = ...` or `param {} = ...`", text, text)
                                   : fmt::format("did you mean `{}`?", near);
    report(std::move(diagnostic));
    return std::nullopt;
}

std::optional<Value> Evaluator::value_of(Definition& definition, std::string_view name, Span asked_at) {
    if (definition.state == Definition::State::running) {
        report(diagnose(Code::circular, asked_at, fmt::format("the value of `{}` depends on itself", name))
                   .label(definition.name_span, "defined here"));
        return std::nullopt;
    }
    if (definition.state == Definition::State::waiting) {
        definition.state = Definition::State::running;
        definition.value = evaluate(definition.expression, *definition.scope);
        definition.state = Definition::State::done;
    }
    if (!definition.value || !spend(steps_of(*definition.value), asked_at)) return std::nullopt;
    return settled(*definition.value);
}

Value Evaluator::settled(Value value) const {
    const Linear* linear = std::get_if<Linear>(&value);
    if (linear == nullptr || values_ == nullptr) return value;
    Rational sum = linear->constant;
    for (const Term& term : linear->terms) {
        const auto& known = (*values_)[static_cast<std::size_t>(term.unknown)];
        if (!known) return value;
        sum += term.factor * *known;
    }
    return Quantity::length(std::move(sum));
}

std::optional<Value> Evaluator::unary(const Syntax& expression, Scope& scope) {
    const std::optional<Value> operand = evaluate(expression.child(0), scope);
    if (!operand) return std::nullopt;
    if (expression.tree->op(expression.node) == Operator::invert) {
        if (const bool* yes = std::get_if<bool>(&*operand)) return !*yes;
    } else if (const auto* quantity = std::get_if<Quantity>(&*operand)) {
        return negate(*quantity);
    } else if (const auto* linear = std::get_if<Linear>(&*operand)) {
        return *linear * ratio(-1);
    } else if (const auto* word = std::get_if<Word>(&*operand)) {
        return Word{"-" + word->text};  // a direction: -thickwise
    }
    report(diagnose(Code::wrong_kind_of_value, expression.child(0).span(),
                    fmt::format("`{}` does not go with {}",
                                operator_text(expression.tree->op(expression.node)), describe(*operand))));
    return std::nullopt;
}

std::optional<Value> Evaluator::binary(const Syntax& expression, Scope& scope) {
    const Operator op = expression.tree->op(expression.node);
    const Syntax left = expression.child(0);
    const Syntax right = expression.child(1);
    if (op == Operator::both || op == Operator::either) {
        const std::optional<bool> first = condition(left, scope);
        if (!first) return std::nullopt;
        if (*first == (op == Operator::either)) return Value(*first);
        const std::optional<bool> second = condition(right, scope);
        if (!second) return std::nullopt;
        return Value(*second);
    }
    const std::optional<Value> a = evaluate(left, scope);
    const std::optional<Value> b = evaluate(right, scope);
    if (!a || !b) return std::nullopt;
    return combine(expression, *a, *b, diagnostics_);
}

std::optional<Value> Evaluator::choice(const Syntax& expression, Scope& scope) {
    const std::optional<bool> yes = condition(expression.child(0), scope);
    if (!yes) return std::nullopt;
    return evaluate(expression.child(*yes ? 1 : 2), scope);
}

std::optional<Value> Evaluator::nearest_tool(const Syntax& expression, Scope& scope) {
    const Syntax tool = expression.child(0);
    const std::optional<Rational> wanted = length(expression.child(1), scope);
    if (!wanted) return std::nullopt;
    const std::optional<Rational> found = nearest_ ? nearest_(tool.text(), *wanted) : std::nullopt;
    if (found) return Value(Quantity::length(*found));
    report(
        diagnose(Code::unknown_name, tool.span(), fmt::format("the shop has no sizes of `{}`", tool.text())));
    return std::nullopt;
}

std::optional<Value> Evaluator::point(const Syntax& expression, Scope& scope) {
    PointValue result;
    for (const Syntax& coordinate : expression.children()) {
        std::optional<Rational> value = length(coordinate, scope);
        if (!value) return std::nullopt;
        result.at.push_back(std::move(*value));
    }
    return Value(std::move(result));
}

std::optional<Quantity> Evaluator::quantity(const Syntax& expression, Scope& scope) {
    const std::optional<Value> value = evaluate(expression, scope);
    if (!value) return std::nullopt;
    if (const auto* quantity = std::get_if<Quantity>(&*value)) return *quantity;
    report(diagnose(Code::wrong_kind_of_value, expression.span(),
                    fmt::format("expected a number or a size, found {}", describe(*value))));
    return std::nullopt;
}

std::optional<Rational> Evaluator::length(const Syntax& expression, Scope& scope) {
    const std::optional<Quantity> value = quantity(expression, scope);
    if (!value) return std::nullopt;
    // Zero has no need of a unit.
    if (value->is_length() || (value->is_number() && value->value == 0)) return value->value;
    report(diagnose(Code::dimension_mismatch, expression.span(),
                    fmt::format("expected a length, found {}", describe(Value(*value))))
               .hint("a length has a unit, as in `3/4\"` or `19mm`"));
    return std::nullopt;
}

std::optional<Linear> Evaluator::linear_length(const Syntax& expression, Scope& scope) {
    const std::optional<Value> value = evaluate(expression, scope);
    if (!value) return std::nullopt;
    if (const auto* linear = std::get_if<Linear>(&*value)) return *linear;
    if (const auto* quantity = std::get_if<Quantity>(&*value)) {
        if (quantity->is_length() || (quantity->is_number() && quantity->value == 0)) {
            return Linear{quantity->value, {}};
        }
    }
    report(diagnose(Code::dimension_mismatch, expression.span(),
                    fmt::format("expected a length, found {}", describe(*value)))
               .hint("a length has a unit, as in `3/4\"` or `19mm`"));
    return std::nullopt;
}

std::optional<bool> Evaluator::condition(const Syntax& expression, Scope& scope) {
    const std::optional<Value> value = evaluate(expression, scope);
    if (!value) return std::nullopt;
    if (const bool* yes = std::get_if<bool>(&*value)) return *yes;
    report(diagnose(Code::wrong_kind_of_value, expression.span(),
                    fmt::format("expected a comparison, found {}", describe(*value)))
               .hint("write a condition such as `height >= 28\"`"));
    return std::nullopt;
}

std::optional<long> Evaluator::whole_number(const Syntax& expression, Scope& scope, long least, long most) {
    const std::optional<Quantity> value = quantity(expression, scope);
    if (!value) return std::nullopt;
    if (value->is_number() && value->value.get_den() == 1 && value->value >= least && value->value <= most) {
        return value->value.get_num().get_si();
    }
    report(diagnose(Code::bad_argument, expression.span(),
                    fmt::format("expected a whole number from {} to {}", least, most)));
    return std::nullopt;
}

}  // namespace rodwright
