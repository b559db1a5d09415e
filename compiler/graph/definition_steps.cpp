#include "compiler/graph/definition_steps.hpp"

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

std::string setting_value(const Syntax& value, const TextMaker& texts) {
    if (value.kind() == NodeKind::string) return texts.fill(value);
    const std::optional<Value> evaluated = texts.evaluator.evaluate(value, texts.scope);
    if (!evaluated) return "";
    if (const auto* quantity = std::get_if<Quantity>(&*evaluated))
        return format_quantity(*quantity, texts.style);
    if (const auto* word = std::get_if<Word>(&*evaluated)) return word->text;
    return "none";
}

void add_after(StepTemplate& result, const Syntax& after, const TextMaker& texts) {
    const Syntax because = after.find(NodeKind::because);
    const std::string reason = because ? texts.fill(because.child(0)) : "";
    for (const Syntax& word : after.all(NodeKind::word))
        result.after.push_back({std::string(word.text()), reason});
}

}  // namespace

ToolNeed tool_need(const Syntax& needs, Scope& scope, Evaluator& evaluator) {
    ToolNeed result;
    for (const Syntax& tool : needs.all(NodeKind::tool)) {
        result.alternatives.push_back(alternative(tool, scope, evaluator));
    }
    return result;
}

std::optional<Supply> supply(const Syntax& statement, const TextMaker& texts) {
    const std::optional<Quantity> count = texts.evaluator.quantity(statement.child(1), texts.scope);
    if (!count) return std::nullopt;
    const Syntax note = statement.child(2);
    return Supply{std::string(statement.child(0).text()), count->value, note ? texts.fill(note) : ""};
}

StepTemplate step(const Syntax& statement, const TextMaker& texts) {
    StepTemplate result;
    bool named = false;
    for (const Syntax& part : statement.children()) {
        switch (part.kind()) {
            case NodeKind::word:
                if (named) {
                    result.test_piece = true;
                } else {
                    result.name = part.text();
                    named = true;
                }
                break;
            case NodeKind::of_member:
                result.member = part.child(0).text();
                break;
            case NodeKind::string:
                result.text = texts.fill(part);
                break;
            case NodeKind::using_tool:
                result.machine = part.child(0).text();
                break;
            case NodeKind::setting:
                result.settings.emplace_back(part.child(0).text(), setting_value(part.child(1), texts));
                break;
            case NodeKind::after:
                add_after(result, part, texts);
                break;
            case NodeKind::caution:
                result.caution = texts.fill(part.child(0));
                break;
            default:
                break;
        }
    }
    return result;
}

}  // namespace rodwright
