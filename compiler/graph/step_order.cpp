#include <fmt/format.h>

#include <algorithm>

#include "compiler/graph/draft.hpp"
#include "compiler/graph/stage.hpp"

namespace rodwright {

namespace {

// The steps of a definition in reading order, also those in conditions.
std::vector<Syntax> steps_of(const Syntax& definition) {
    std::vector<Syntax> steps;
    const auto first = static_cast<std::uint32_t>(definition.node);
    for (std::uint32_t i = 0; i < definition.node_count(); ++i) {
        const Syntax node{definition.tree, NodeId{first + i}};
        if (node.kind() == NodeKind::step) steps.push_back(node);
    }
    return steps;
}

std::vector<std::string> names_of(const std::vector<Syntax>& steps) {
    std::vector<std::string> names;
    for (const Syntax& step : steps) names.emplace_back(step.child(0).text());
    return names;
}

class OrderCheck {
  public:
    OrderCheck(const Syntax& definition, Span used_at, Design& design, Evaluator& evaluator)
        : definition_(definition),
          used_at_(used_at),
          design_(design),
          evaluator_(evaluator),
          own_(names_of(steps_of(definition))) {}

    void one(const Syntax& step) {
        for (const Syntax& after : step.all(NodeKind::after)) {
            for (const Syntax& word : after.all(NodeKind::word)) named(step.child(0).text(), word);
        }
    }

  private:
    const Syntax& definition_;
    Span used_at_;
    Design& design_;
    Evaluator& evaluator_;
    std::vector<std::string> own_;

    void report(const Syntax& word, std::string message, std::string help) {
        Diagnostic diagnostic = diagnose(Code::unknown_name, word.span(), std::move(message));
        diagnostic.help = std::move(help);
        diagnostic.trace.push_back(
            {used_at_, fmt::format("in `{}`, used here", definition_.child(0).text())});
        evaluator_.report(std::move(diagnostic));
    }

    static std::string nearest_or(std::string_view name, std::vector<std::string> candidates,
                                  std::string otherwise) {
        const std::string near = nearest_name(name, std::move(candidates));
        return near.empty() ? std::move(otherwise) : fmt::format("did you mean `{}`?", near);
    }

    void named(std::string_view step, const Syntax& word) {
        const std::string_view text = word.text();
        const std::size_t dot = text.find('.');
        if (dot != std::string_view::npos) {
            elsewhere(word, text.substr(0, dot), text.substr(dot + 1));
            return;
        }
        const auto count = std::ranges::count(own_, text);
        if (count > (text == step ? 1 : 0) || find_stage(text)) return;
        if (count > 0) {
            report(word, fmt::format("the step `{}` cannot come after itself", text),
                   "name the step that comes before it, or take this `after` out");
            return;
        }
        std::vector<std::string> candidates = stage_words();
        candidates.insert(candidates.end(), own_.begin(), own_.end());
        report(word, fmt::format("`{}` has no step `{}`", definition_.child(0).text(), text),
               nearest_or(text, std::move(candidates),
                          fmt::format("its steps are {}; the stages are {}; a step of another joint is "
                                      "written `joint.step`",
                                      fmt::join(own_, ", "), fmt::join(stage_words(), ", "))));
    }

    void elsewhere(const Syntax& word, std::string_view name, std::string_view step) {
        Syntax other = design_.joint(name);
        if (!other) other = design_.shape(name);
        if (!other) {
            std::vector<std::string> known = design_.joint_names();
            for (std::string& shape : design_.shape_names()) known.push_back(std::move(shape));
            report(word, fmt::format("there is no joint or shape `{}`", name),
                   nearest_or(name, std::move(known), "`rodwright list joints` and `list shapes` list them"));
            return;
        }
        const std::vector<std::string> steps = names_of(steps_of(other));
        if (std::ranges::find(steps, step) != steps.end()) return;
        report(word, fmt::format("`{}` has no step `{}`", name, step),
               nearest_or(step, steps, fmt::format("its steps are {}", fmt::join(steps, ", "))));
    }
};

}  // namespace

void check_step_order(Draft& draft, const Syntax& definition, Span used_at) {
    if (!draft.ordered.emplace(definition.tree->file(), definition.node).second) return;
    OrderCheck check(definition, used_at, draft.design, draft.evaluator);
    for (const Syntax& step : steps_of(definition)) check.one(step);
}

}  // namespace rodwright
