#include "compiler/graph/definition_steps.hpp"

#include "compiler/graph/worked_out.hpp"

namespace rodwright {

namespace {

ToolNeed::Alternative alternative(const Syntax& tool, Scope& scope, Evaluator& evaluator) {
    ToolNeed::Alternative result;
    std::string name;  // the word before a size: `reach`
    bool first = true;
    for (const Syntax& part : tool.children()) {
        if (first) {
            result.tool = part.text();
            first = false;
        } else if (part.kind() == NodeKind::word) {
            name = part.text();
        } else if (auto size = evaluator.quantity(part, scope)) {
            result.sizes.emplace_back(std::exchange(name, ""), std::move(*size));
        }
    }
    return result;
}

Phrase setting_value(const Syntax& value, const TextMaker& texts) {
    if (value.kind() == NodeKind::string) return texts.fill(value).phrase;
    const std::optional<Value> evaluated = texts.evaluator.evaluate(value, texts.scope);
    Phrase said;
    if (evaluated) said.words.push_back(as_said(*evaluated));
    return said;
}

void add_after(StepTemplate& result, const Syntax& after, const TextMaker& texts) {
    const Syntax because = after.find(NodeKind::because);
    const Phrase reason = because ? texts.fill(because.child(0)).phrase : Phrase();
    for (const Syntax& word : after.all(NodeKind::word))
        result.after.push_back({std::string(word.text()), reason});
}

void add_text(StepTemplate& result, FilledText filled, std::set<std::string>& named) {
    result.text = std::move(filled.phrase);
    named.merge(filled.values);
}

void add_names(const Syntax& expression, std::set<std::string>& named) {
    if (expression.kind() == NodeKind::name) named.emplace(expression.text());
    for (const Syntax& child : expression.children()) add_names(child, named);
}

}  // namespace

ToolNeed tool_need(const Syntax& needs, const TextMaker& texts, std::set<std::string>& named) {
    ToolNeed result;
    for (const Syntax& tool : needs.all(NodeKind::tool)) {
        result.alternatives.push_back(alternative(tool, texts.scope, texts.evaluator));
    }
    add_names(needs, named);
    return result;
}

std::optional<Supply> supply(const Syntax& statement, const TextMaker& texts, std::set<std::string>& named) {
    const std::optional<Quantity> count = texts.evaluator.quantity(statement.child(1), texts.scope);
    if (!count) return std::nullopt;
    add_names(statement.child(1), named);
    const Syntax note = statement.child(2);
    if (!note) return Supply{std::string(statement.child(0).text()), count->value, {}};
    FilledText filled = texts.fill(note);
    named.merge(filled.values);
    return Supply{std::string(statement.child(0).text()), count->value, std::move(filled.phrase)};
}

StepTemplate step(const Syntax& statement, const TextMaker& texts, std::set<std::string>& named) {
    StepTemplate result;
    result.where = statement.span();
    bool has_name = false;
    for (const Syntax& part : statement.children()) {
        switch (part.kind()) {
            case NodeKind::word:
                if (has_name) {
                    result.test_piece = true;
                } else {
                    result.name = part.text();
                    has_name = true;
                }
                break;
            case NodeKind::of_member:
                result.member = part.child(0).text();
                break;
            case NodeKind::string:
                add_text(result, texts.fill(part), named);
                break;
            case NodeKind::using_tool:
                result.machine = part.child(0).text();
                if (const Syntax cutter = part.find(NodeKind::tool)) {
                    result.cutter = alternative(cutter, texts.scope, texts.evaluator);
                    add_names(cutter, named);
                }
                break;
            case NodeKind::setting:
                result.settings.push_back({std::string(part.child(0).text()),
                                           setting_value(part.child(1), texts),
                                           worked_out(part.child(1), texts)});
                add_names(part.child(1), named);
                break;
            case NodeKind::after:
                add_after(result, part, texts);
                break;
            case NodeKind::caution:
                result.caution = texts.fill(part.child(0)).phrase;
                break;
            default:
                break;
        }
    }
    return result;
}

}  // namespace rodwright
