#include "compiler/workplan/data/order_rules.hpp"

#include <array>

#include "compiler/words.hpp"
#include "compiler/workplan/data/work_fields.hpp"

namespace rodwright {
namespace {

// In the order of WaitFor and of NoteWhen.
constexpr std::array<std::string_view, 5> wait_words = {"nothing", "clamp", "cure", "recoat", "cured"};
constexpr std::array<std::string_view, 4> when_words = {"mirrored", "batch", "test_piece", "mates"};

std::optional<WorkSelector> parse_selector(const std::string& text, const OperationTable& operations) {
    WorkSelector selector;
    selector.stage = find_stage(text);
    if (selector.stage) return selector;
    const std::size_t dot = text.find('.');
    if (dot == std::string::npos) {
        if (operations.find(text) == nullptr) return std::nullopt;
        selector.name = text;
        return selector;
    }
    selector.work = text.substr(0, dot);
    selector.name = text.substr(dot + 1);
    if (selector.work.empty() || selector.name.empty()) return std::nullopt;
    return selector;
}

std::optional<WorkSelector> selector_of(FieldReader& fields, std::string_view key,
                                        const OperationTable& operations) {
    const YamlNode* node = fields.scalar(key);
    if (node == nullptr) return std::nullopt;
    std::optional<WorkSelector> selector = parse_selector(node->text, operations);
    if (!selector)
        fields.fault(*node, "this is no stage, no operation of operations.yaml, and not `joint.step`");
    return selector;
}

bool read_rule(const YamlNode& node, const OperationTable& operations, bool own, OrderRules& rules,
               Diagnostics& diagnostics) {
    FieldReader fields(node, {"before", "after", "because", "source", "wait", "others", "firm"}, diagnostics);
    const std::optional<WorkSelector> before = selector_of(fields, "before", operations);
    const std::optional<WorkSelector> after = selector_of(fields, "after", operations);
    std::string because = fields.text("because");
    fields.text("source");
    const auto wait = word_of<WaitFor>(fields, "wait", wait_words, true);
    const bool others = fields.flag("others");
    const bool firm = fields.flag("firm");
    if (!fields.ok() || !before || !after) return false;
    rules.rules.push_back({*before, *after, std::move(because), wait, own, others, firm});
    return true;
}

bool read_note(const YamlNode& node, OrderRules& rules, Diagnostics& diagnostics) {
    FieldReader fields(node, {"when", "text", "source"}, diagnostics);
    const auto when = word_of<NoteWhen>(fields, "when", when_words);
    std::string text = fields.text("text");
    fields.text("source");
    if (fields.ok()) rules.notes.push_back({when, std::move(text)});
    return fields.ok();
}

}  // namespace

std::string selector_words(const WorkSelector& selector) {
    if (selector.stage) return plain_words(stage_word(*selector.stage));
    if (selector.work.empty()) return plain_words(selector.name);
    return (selector.work == "*" ? "any" : plain_words(selector.work)) + " " + plain_words(selector.name);
}

std::optional<OrderRules> read_order_rules(OrderRules base, const OperationTable& operations,
                                           const SourceManager& sources, FileId file,
                                           Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"rules", "notes"}, diagnostics);
    bool ok = true;
    const bool own = !sources.is_library(file);
    if (const YamlNode* rules = fields.optional_list("rules")) {
        for (const YamlNode& node : rules->children)
            ok = read_rule(node, operations, own, base, diagnostics) && ok;
    }
    if (const YamlNode* notes = fields.optional_list("notes")) {
        for (const YamlNode& node : notes->children) ok = read_note(node, base, diagnostics) && ok;
    }
    if (!ok || !fields.ok()) return std::nullopt;
    return base;
}

}  // namespace rodwright
