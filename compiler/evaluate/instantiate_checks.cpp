// What a design says to the checks: findings that its maker accepts, how far its drawers open, and the air it
// will stand in.
#include <fmt/format.h>

#include "compiler/evaluate/instantiation.hpp"

namespace rodwright {

void Instantiation::accept(const Pending& pending, const Syntax& line) {
    const Syntax word = line.child(0);
    const Syntax upon = line.find(NodeKind::upon);
    const Syntax reason = line.find(NodeKind::because).child(0);
    const CodeInfo* code = find_code(word.text());
    std::string because = unquoted(reason);
    std::vector<PartPattern> on;
    if (upon) on = members(pending, upon.child(0));
    if (upon && on.empty()) return;  // reported
    if (code == nullptr) {
        std::vector<std::string> codes;
        for (const CodeInfo& each : all_codes()) codes.emplace_back(each.code);
        const std::string near = nearest_name(word.text(), std::move(codes));
        report(
            diagnose(Code::unknown_name, word.span(), fmt::format("there is no code `{}`", word.text()))
                .hint(near.empty()
                          ? "write the code that stands in the finding, as in `accept W1102 because \"...\"`"
                          : fmt::format("did you mean `{}`?", near)));
    } else if (because.find_first_not_of(' ') == std::string::npos) {
        report(diagnose(Code::bad_argument, reason.span(), "a finding is accepted for a reason")
                   .hint("say why, for whoever reads the packet"));
    } else {
        out_.accepts.push_back({std::string(code->code), std::move(on), std::move(because), line.span()});
    }
}

void Instantiation::opens(const Pending& pending, const Syntax& line) {
    Container& container = *pending.container;
    if (container.parent == nullptr) return refuse(line, "in a piece: an assembly opens, as a drawer does");
    const std::optional<Quantity> by = evaluator_.quantity(line.child(0), *container.scope);
    if (!by) return;
    if (!by->is_length() || by->value <= 0) {
        report(
            diagnose(Code::bad_argument, line.child(0).span(), "an assembly opens by a length above zero"));
    } else {
        container.opens = by->value;
    }
}

// A percentage above zero and up to `most`, as a part of one.
std::optional<Rational> Instantiation::share(const Syntax& expression, Scope& scope, const Rational& most) {
    const std::optional<Quantity> value = evaluator_.quantity(expression, scope);
    if (!value) return std::nullopt;
    const bool percentage =
        value->dimension.dimensionless() && value->dimension.ratio == RatioKind::percentage;
    if (percentage && value->value > 0 && value->value <= most) return value->value;
    Quantity bound = *value;
    bound.value = most;
    bound.dimension = Dimension::number();
    bound.dimension.ratio = RatioKind::percentage;
    report(diagnose(Code::bad_argument, expression.span(),
                    fmt::format("this is a percentage above nothing, {} at the most",
                                format_quantity(bound, out_.style)))
               .hint("as in `climate 30% to 65% at 68F made at 8%`"));
    return std::nullopt;
}

void Instantiation::climate(const Syntax& line, Scope& scope) {
    const Rational most_humid = ratio(95, 100);         // the equation behind it is fitted no further
    const Rational most_moist = ratio(30, 100);         // above fibre saturation wood does not move
    const Rational coldest = ratio(27315 - 3000, 100);  // -30 C
    const Rational hottest = ratio(27315 + 10000, 100);
    const std::optional<Rational> driest = share(line.child(0), scope, most_humid);
    const std::optional<Rational> dampest = share(line.child(1), scope, most_humid);
    const std::optional<Quantity> heat = evaluator_.quantity(line.child(2), scope);
    const Syntax made = line.find(NodeKind::made_at);
    const std::optional<Rational> made_at = made ? share(made.child(0), scope, most_moist) : std::nullopt;
    if (!driest || !dampest || !heat || (made && !made_at)) return;
    if (heat->dimension != Dimension::of(Base::temperature) || heat->value < coldest ||
        heat->value > hottest) {
        report(
            diagnose(Code::bad_argument, line.child(2).span(), "this is no temperature that wood stands in")
                .hint("as in `climate 30% to 65% at 68F`, or `at 20C`"));
    } else if (*dampest < *driest) {
        report(diagnose(Code::bad_argument, line.child(1).span(),
                        "the driest air comes first, then the dampest"));
    } else if (out_.climate) {
        report(diagnose(Code::defined_twice, line.span(), "the climate is said twice")
                   .label(out_.climate->where, "here first"));
    } else {
        out_.climate = ClimateStatement{*driest, *dampest, heat->value, made_at, line.span()};
    }
}

}  // namespace rodwright
