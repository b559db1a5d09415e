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

// An edge that shows tells nothing of the broad faces.
void check_shown(const PartDeclaration& declaration, const PartAxes& axes, Evaluator& evaluator) {
    for (const auto& shown : declaration.shown) {
        if (axis_of(shown.first) == axes.thick) continue;
        evaluator.report(diagnose(Code::bad_selector, shown.second,
                                  fmt::format("this is no broad face of `{}`", declaration.name))
                             .hint("say which of its two broad faces is seen; `thick` turns the part"));
    }
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
        if (part.usable) {
            part.axes = axes_of(declaration, part.body);
            const bool first = declaration.instances.front() == i;
            if (first) check_shown(declaration, part.axes, draft.evaluator);
        }
        draft.parts.push_back(std::move(part));
    }
}

// What is passed is passed once.
static bool add_within(std::size_t& count, std::size_t more, std::size_t most, std::string_view of,
                       Draft& draft, Span where) {
    const bool reported = count > most;
    count += more;
    if (count <= most) return true;
    if (reported) return false;
    draft.evaluator.report(
        diagnose(Code::too_large, where, fmt::format("the piece has more than {} {}", most, of))
            .hint("make rows shorter, or name the copies that are meant"));
    return false;
}

bool count_features(Draft& draft, std::size_t more, Span where) {
    return add_within(draft.feature_count, more, limits::features, "cuts, tongues and corners of them", draft,
                      where);
}

bool count_trials(Draft& draft, std::size_t more, Span where) {
    return add_within(draft.trials, more, limits::trials, "pairs of parts that might meet in a join", draft,
                      where);
}

bool count_joint(Draft& draft, Span where) {
    return add_within(draft.joint_count, 1, limits::joints, "joints", draft, where);
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
    // Every feature carries it.
    constexpr std::size_t longest = 200;
    if (label.size() <= longest) return label;
    std::size_t end = longest;
    while ((static_cast<unsigned char>(label[end]) & 0xC0U) == 0x80U) --end;  // inside a character
    return label.substr(0, end) + " ...";
}

}  // namespace rodwright
