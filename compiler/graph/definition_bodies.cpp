#include "compiler/graph/definition_bodies.hpp"

#include <fmt/format.h>

#include "compiler/limits.hpp"

namespace rodwright {

namespace {

constexpr Axis u_axis = Axis::wide;
constexpr Axis v_axis = Axis::deep;
constexpr Axis w_axis = Axis::tall;

std::optional<Direction> direction_word(std::string_view word, MemberForm form) {
    const bool positive = word.empty() || word.front() != '-';
    if (!positive) word.remove_prefix(1);
    if (word == "thickwise") return Direction{u_axis, positive};
    if (word == "widthwise") return Direction{v_axis, positive};
    if (word == "inward") return Direction{w_axis, positive};
    if (word == "lengthwise") return Direction{form == MemberForm::end ? w_axis : v_axis, positive};
    return std::nullopt;
}

bool usable(const BodyValue& value) {
    if (value.length <= 0) return false;
    return value.form == BodyForm::prism || (value.size_u > 0 && value.size_v > 0);
}

// Swept along u or v, the body is centred on the origin; along w it starts at the meeting plane.
void turn_along(Body& body, Axis axis) {
    if (axis == w_axis) return;
    const bool along_u = axis == u_axis;
    body.frame.u = {along_u ? v_axis : u_axis, true};
    body.frame.v = {w_axis, true};
    body.frame.w = {axis, true};
    body.frame.origin[axis] -= body.length / 2;
}

bool move(Body& body, const Syntax& at, Scope& scope, Evaluator& evaluator) {
    const std::optional<Value> value = evaluator.evaluate(at.child(0), scope);
    const auto* point = value ? std::get_if<PointValue>(&*value) : nullptr;
    if (point == nullptr) return false;
    for (std::size_t i = 0; i < point->at.size() && i < 3; ++i) {
        body.frame.origin[static_cast<Axis>(i)] += point->at[i];
    }
    return true;
}

std::vector<Body> repeated(const Body& body, const Syntax& repeat, MemberForm form, Scope& scope,
                           Evaluator& evaluator) {
    const auto count = evaluator.whole_number(repeat.child(0), scope, 1, static_cast<long>(limits::repeats));
    const std::optional<Rational> pitch = evaluator.length(repeat.child(1), scope);
    const std::optional<Direction> along = direction(repeat.child(2), form, scope, evaluator);
    std::vector<Body> result;
    if (!count || !pitch || !along) return result;
    constexpr std::size_t steps_of_body = 32;  // numbers that it has, two words each
    const std::size_t steps = steps_of_body + 4 * body.profile.size();
    if (!evaluator.spend(static_cast<std::size_t>(*count) * steps, repeat.span())) return result;
    for (long i = 0; i < *count; ++i) {
        Body copy = body;
        copy.frame.origin[along->axis] += ratio(2 * i - (*count - 1), 2) * *pitch;
        result.push_back(std::move(copy));
    }
    return result;
}

}  // namespace

std::optional<Direction> direction(const Syntax& expression, MemberForm form, Scope& scope,
                                   Evaluator& evaluator) {
    const std::optional<Value> value = evaluator.evaluate(expression, scope);
    if (!value) return std::nullopt;
    if (const auto* word = std::get_if<Word>(&*value)) {
        if (const std::optional<Direction> found = direction_word(word->text, form)) return found;
    }
    evaluator.report(
        diagnose(Code::wrong_kind_of_value, expression.span(),
                 fmt::format("expected a direction, found {}", describe(*value)))
            .hint("directions are thickwise, widthwise, lengthwise, inward, and the same with `-`"));
    return std::nullopt;
}

std::vector<Body> definition_bodies(const Syntax& node, MemberForm form, Scope& scope, Evaluator& evaluator) {
    const Syntax call = node.child(0);
    const std::optional<Value> value = evaluator.evaluate(call, scope);
    if (!value) return {};
    const auto* given = std::get_if<BodyValue>(&*value);
    if (given == nullptr || !usable(*given)) {
        evaluator.report(diagnose(Code::bad_feature, call.span(),
                                  given == nullptr
                                      ? fmt::format("expected a body, found {}", describe(*value))
                                      : "a size of this body is zero or less"));
        return {};
    }
    Body body{given->form, {}, given->size_u, given->size_v, given->length, given->profile};
    if (const Syntax along = node.find(NodeKind::along)) {
        const std::optional<Direction> axis = direction(along.child(0), form, scope, evaluator);
        if (!axis) return {};
        if (given->form == BodyForm::box) {
            evaluator.report(
                diagnose(Code::bad_feature, along.span(), "a box has its three directions already"));
            return {};
        }
        turn_along(body, axis->axis);
    }
    if (const Syntax at = node.find(NodeKind::at)) {
        if (!move(body, at, scope, evaluator)) return {};
    }
    if (const Syntax repeat = node.find(NodeKind::repeat))
        return repeated(body, repeat, form, scope, evaluator);
    return {body};
}

std::optional<FastenerForm> fastener_form(const Syntax& word, Evaluator& evaluator) {
    if (word.text() == "dowel") return FastenerForm::dowel;
    if (word.text() == "screw") return FastenerForm::screw;
    if (word.text() == "clip") return FastenerForm::clip;
    evaluator.report(
        diagnose(Code::bad_argument, word.span(), fmt::format("`{}` is no fastener", word.text()))
            .hint("write `hold dowel` (glued in), `hold screw` or `hold clip` (against lifting only)"));
    return std::nullopt;
}

}  // namespace rodwright
