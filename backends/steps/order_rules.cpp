#include "backends/steps/order_rules.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>
#include <stdexcept>

#include "compiler/data/yaml_fields.hpp"
#include "compiler/stdlib.hpp"

namespace rodwright {
namespace {

// In the order of Stage.
constexpr std::array<std::string_view, stage_count> stage_titles = {
    "Stock to size",           "Laying out", "Joints",    "Shaping",
    "Sanding before assembly", "Assembly",   "Finishing", "After finishing"};

// In the order of AppliesTo.
constexpr std::array<std::string_view, 7> applies_words = {"all",    "solid", "sheet", "glued",
                                                           "joined", "glue",  "finish"};

template <typename Enum>
std::optional<Enum> find_word(std::span<const std::string_view> words, std::string_view word) {
    const auto found = std::ranges::find(words, word);
    if (found == words.end()) return std::nullopt;
    return static_cast<Enum>(found - words.begin());
}

void refuse(const YamlNode& node, std::string_view key, std::string message, Diagnostics& diagnostics) {
    const YamlNode* entry = find_entry(node, key);
    diagnostics.add(diagnose(Code::bad_data, entry == nullptr ? node.span : entry->span, std::move(message)));
}

void read_step(const YamlNode& node, OrderRules& rules, Diagnostics& diagnostics) {
    FieldReader fields(node, {"name", "stage", "applies", "text", "caution"}, diagnostics);
    GeneralStep step;
    step.name = fields.text("name");
    const std::optional<Stage> stage = find_stage(fields.text("stage"));
    const auto applies = find_word<AppliesTo>(applies_words, fields.text("applies"));
    step.text = fields.text("text");
    step.caution = fields.text_or("caution", "");
    if (!fields.ok()) return;
    if (!stage) refuse(node, "stage", "there is no such stage", diagnostics);
    if (!applies)
        refuse(node, "applies", fmt::format("one of {} is wanted", fmt::join(applies_words, ", ")),
               diagnostics);
    if (!stage || !applies) return;
    step.stage = *stage;
    step.applies = *applies;
    rules.steps.push_back(std::move(step));
}

std::optional<StepSelector> parse_selector(const std::string& text, const OrderRules& rules) {
    StepSelector selector;
    selector.stage = find_stage(text);
    if (selector.stage) return selector;
    const std::size_t dot = text.find('.');
    if (dot != std::string::npos) {
        selector.work = text.substr(0, dot);
        selector.name = text.substr(dot + 1);
        if (selector.work.empty() || selector.name.empty()) return std::nullopt;
        return selector;
    }
    if (std::ranges::find(rules.steps, text, &GeneralStep::name) == rules.steps.end()) return std::nullopt;
    selector.name = text;
    return selector;
}

void read_rule(const YamlNode& node, OrderRules& rules, Diagnostics& diagnostics) {
    FieldReader fields(node, {"before", "after", "because", "source"}, diagnostics);
    const std::optional<StepSelector> before = parse_selector(fields.text("before"), rules);
    const std::optional<StepSelector> after = parse_selector(fields.text("after"), rules);
    std::string because = fields.text("because");
    fields.text("source");
    if (!fields.ok()) return;
    for (const char* side : {"before", "after"}) {
        if (side == std::string_view("before") ? before : after) continue;
        refuse(node, side, "this is no stage, no general work above, and not `joint.step`", diagnostics);
    }
    if (before && after) rules.rules.push_back({*before, *after, std::move(because)});
}

}  // namespace

std::string_view stage_title(Stage stage) {
    return stage_titles[static_cast<std::size_t>(stage)];
}

std::optional<OrderRules> read_order_rules(const SourceManager& sources, FileId file,
                                           Diagnostics& diagnostics) {
    const std::size_t errors_before = diagnostics.errors();
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"caution", "steps", "rules"}, diagnostics);
    OrderRules rules;
    rules.caution = fields.text("caution");
    const YamlNode* steps = fields.list("steps");
    const YamlNode* order = fields.list("rules");
    if (steps == nullptr || order == nullptr) return std::nullopt;
    for (const YamlNode& node : steps->children) read_step(node, rules, diagnostics);
    for (const YamlNode& node : order->children) read_rule(node, rules, diagnostics);
    if (diagnostics.errors() != errors_before) return std::nullopt;
    return rules;
}

static OrderRules read_embedded() {
    const auto& files = stdlib_files();
    const auto file = std::ranges::find(files, "data/order.yaml", &EmbeddedFile::path);
    if (file == files.end()) throw std::logic_error("data/order.yaml was not built in");
    SourceManager sources;
    Diagnostics diagnostics;
    std::optional<OrderRules> rules =
        read_order_rules(sources, sources.add(file->path, file->text), diagnostics);
    if (!rules) throw std::logic_error("data/order.yaml: " + diagnostics.list()[0].message);
    return std::move(*rules);
}

const OrderRules& embedded_order_rules() {
    static const OrderRules rules = read_embedded();
    return rules;
}

}  // namespace rodwright
