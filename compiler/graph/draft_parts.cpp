#include <fmt/format.h>

#include <set>

#include "compiler/graph/draft.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

namespace {

// The length runs with the grain; of the other two the thickness is the smaller, unless the part says.
PartAxes axes_of(const PartDeclaration& declaration, const Box& body) {
    PartAxes axes;
    axes.length = *declaration.grain;
    std::vector<Axis> others;
    for (const Axis axis : all_axes) {
        if (axis != axes.length) others.push_back(axis);
    }
    axes.width = others[0];
    axes.thick = others[1];
    const bool swap =
        declaration.thick ? *declaration.thick == others[0] : body.size(others[0]) < body.size(others[1]);
    if (swap) std::swap(axes.width, axes.thick);
    return axes;
}

void report_no_grain(const PartDeclaration& declaration, Evaluator& evaluator) {
    evaluator.report(diagnose(Code::no_grain, declaration.where,
                              fmt::format("`{}` does not say which way its grain runs", declaration.name))
                         .hint("write `grain wide`, `grain deep` or `grain tall` in the part"));
}

void check_thick(const PartDeclaration& declaration, Evaluator& evaluator) {
    if (!declaration.thick || declaration.thick != declaration.grain) return;
    evaluator.report(
        diagnose(Code::no_grain, declaration.where,
                 fmt::format("the thickness of `{}` cannot lie along its grain", declaration.name)));
}

bool has_size(const Box& body) {
    return body.size(Axis::wide) > 0 && body.size(Axis::deep) > 0 && body.size(Axis::tall) > 0;
}

}  // namespace

void draft_parts(Draft& draft) {
    for (const PartDeclaration& declaration : draft.statements.declarations) {
        if (!declaration.grain) report_no_grain(declaration, draft.evaluator);
        check_thick(declaration, draft.evaluator);
    }
    for (std::size_t i = 0; i < draft.statements.instances.size(); ++i) {
        DraftPart part;
        part.instance = i;
        part.body = draft.places.instances[i];
        const PartDeclaration& declaration =
            draft.statements.declarations[draft.statements.instances[i].declaration];
        part.usable = draft.places.instance_known[i] && declaration.grain && has_size(part.body) &&
                      declaration.thick != declaration.grain;
        if (part.usable) part.axes = axes_of(declaration, part.body);
        draft.parts.push_back(std::move(part));
    }
}

static bool within(std::size_t count, std::size_t most, std::string_view of, Draft& draft, Span where) {
    if (count <= most) return true;
    draft.evaluator.report(
        diagnose(Code::too_large, where, fmt::format("the piece has more than {} {}", most, of)));
    return false;
}

bool count_features(Draft& draft, std::size_t more, Span where) {
    draft.feature_count += more;
    return within(draft.feature_count, limits::features, "cuts and tongues", draft, where);
}

bool count_trials(Draft& draft, std::size_t more, Span where) {
    draft.trials += more;
    return within(draft.trials, limits::trials, "pairs of parts that might meet in a join", draft, where);
}

bool may_add_joint(Draft& draft, Span where) {
    return within(draft.joints.size() + 1, limits::joints, "joints", draft, where);
}

std::string call_label(const Syntax& call) {
    std::string label;
    bool blank = false;
    for (const char c : call.text()) {
        const bool space = c == ' ' || c == '\n' || c == '\t' || c == '\r';
        if (blank && !space && !label.empty() && label.back() != '(' && c != ')') label += ' ';
        if (!space) label += c;
        blank = space;
    }
    return label;
}

}  // namespace rodwright
