#include "compiler/workplan/data/operation_table.hpp"

#include <array>

#include "compiler/workplan/data/work_fields.hpp"

namespace rodwright {
namespace {

// In the order of Stage.
constexpr std::array<std::string_view, stage_count> stage_titles = {
    "Stock to size",           "Laying out", "Joints",    "Shaping",
    "Sanding before assembly", "Assembly",   "Finishing", "After finishing"};

// In the order of AppliesTo and of Each.
constexpr std::array<std::string_view, 9> applies_words = {"all",    "boards", "panels", "staves", "sheets",
                                                           "joined", "glued",  "finish", "taken"};
constexpr std::array<std::string_view, 5> each_words = {"together", "thickness", "width", "length", "coat"};

TimeNeeded read_time(const YamlNode& node, Diagnostics& diagnostics, bool& ok) {
    FieldReader fields(node, {"set_up", "each", "foot", "area", "source"}, diagnostics);
    TimeNeeded time{seconds_of(fields, "set_up"), seconds_of(fields, "each"), seconds_of(fields, "foot"),
                    seconds_of(fields, "area"), fields.text("source") == "assumed"};
    ok = ok && fields.ok();
    return time;
}

std::optional<Stage> stage_of(FieldReader& fields) {
    const YamlNode* node = fields.scalar("stage");
    if (node == nullptr) return std::nullopt;
    const std::optional<Stage> stage = find_stage(node->text);
    if (!stage) fields.fault(*node, "there is no such stage");
    return stage;
}

void read_machines(FieldReader& fields, GeneralOperation& operation) {
    const YamlNode* machines = fields.optional_list("machine");
    if (machines == nullptr) return;
    for (const YamlNode& node : machines->children) {
        if (fields.expect(node, YamlKind::scalar)) operation.machines.push_back(node.text);
    }
}

void read_settings(FieldReader& fields, GeneralOperation& operation) {
    const YamlNode* settings = fields.optional_map("settings");
    if (settings == nullptr) return;
    for (const YamlNode& node : settings->children) {
        if (fields.expect(node, YamlKind::scalar)) operation.settings.emplace_back(node.key, node.text);
    }
}

// What `brings` lists, or the size that the operation is made for.
void read_brings(FieldReader& fields, GeneralOperation& operation) {
    if (operation.each == Each::length) operation.brings = {Axis::wide};
    if (operation.each == Each::width) operation.brings = {Axis::deep};
    if (operation.each == Each::thickness) operation.brings = {Axis::tall};
    const YamlNode* list = fields.optional_list("brings");
    if (list == nullptr) return;
    for (const YamlNode& node : list->children) {
        const auto axis = std::ranges::find(all_axes, node.text, size_name);
        if (axis == all_axes.end()) {
            fields.fault(node, "`length`, `width` or `thickness` is wanted");
        } else {
            operation.brings.push_back(*axis);
        }
    }
}

bool read_operation(const YamlNode& node, OperationTable& table, Diagnostics& diagnostics) {
    FieldReader fields(node,
                       {"name", "stage", "applies", "each", "brings", "machine", "settings", "test_piece",
                        "text", "caution", "time"},
                       diagnostics);
    GeneralOperation operation;
    operation.name = fields.text("name");
    const std::optional<Stage> stage = stage_of(fields);
    operation.applies = word_of<AppliesTo>(fields, "applies", applies_words);
    operation.each = word_of<Each>(fields, "each", each_words, true);
    read_brings(fields, operation);
    read_machines(fields, operation);
    read_settings(fields, operation);
    operation.test_piece = fields.flag("test_piece");
    operation.text = fields.text("text");
    operation.caution = fields.text_or("caution", "");
    bool ok = true;
    if (const YamlNode* time = fields.map("time")) operation.time = read_time(*time, diagnostics, ok);
    if (!fields.ok() || !ok || !stage) return false;
    operation.stage = *stage;
    const auto known = std::ranges::find(table.operations, operation.name, &GeneralOperation::name);
    if (known == table.operations.end()) {
        table.operations.push_back(std::move(operation));
    } else {
        *known = std::move(operation);
    }
    return true;
}

bool read_times(const YamlNode& node, OperationTable& table, Diagnostics& diagnostics) {
    FieldReader fields(node, {"steps", "machines", "by_hand"}, diagnostics);
    bool ok = true;
    const auto read_map = [&](const YamlNode* map, std::map<std::string, TimeNeeded>& times) {
        if (map == nullptr) return;
        for (const YamlNode& entry : map->children) times[entry.key] = read_time(entry, diagnostics, ok);
    };
    read_map(fields.optional_map("steps"), table.step_times);
    read_map(fields.optional_map("machines"), table.machine_times);
    if (const YamlNode* by_hand = fields.optional_map("by_hand"))
        table.by_hand = read_time(*by_hand, diagnostics, ok);
    return ok && fields.ok();
}

}  // namespace

std::string_view stage_title(Stage stage) {
    return stage_titles[static_cast<std::size_t>(stage)];
}

const GeneralOperation* OperationTable::find(std::string_view name) const {
    const auto found = std::ranges::find(operations, name, &GeneralOperation::name);
    return found == operations.end() ? nullptr : &*found;
}

const TimeNeeded& OperationTable::time_for(const std::string& work, const std::string& step,
                                           const std::string& machine) const {
    if (const auto own = step_times.find(work + "." + step); own != step_times.end()) return own->second;
    if (const auto named = step_times.find(step); named != step_times.end()) return named->second;
    const auto at = machine_times.find(machine);
    return at == machine_times.end() ? by_hand : at->second;
}

std::optional<OperationTable> read_operations(OperationTable base, const SourceManager& sources, FileId file,
                                              Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"caution", "operations", "times"}, diagnostics);
    base.caution = fields.text_or("caution", base.caution);
    bool ok = true;
    if (const YamlNode* operations = fields.optional_list("operations")) {
        for (const YamlNode& node : operations->children) ok = read_operation(node, base, diagnostics) && ok;
    }
    if (const YamlNode* times = fields.optional_map("times"))
        ok = read_times(*times, base, diagnostics) && ok;
    if (!ok || !fields.ok()) return std::nullopt;
    return base;
}

}  // namespace rodwright
