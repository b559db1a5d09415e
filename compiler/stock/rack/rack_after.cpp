#include "compiler/stock/rack/rack_after.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "compiler/data/yaml_fields.hpp"
#include "compiler/stock/rack/entry_text.hpp"
#include "compiler/stock/rack/list_edits.hpp"
#include "compiler/stock/rack/offcut.hpp"
#include "compiler/stock/rack/rack_fields.hpp"
#include "compiler/stock/rack/yaml_extent.hpp"

namespace rodwright {

namespace {

// How many more lengths in it are metric than not.
int metric_lengths(const YamlNode& node) {
    int metric = 0;
    const std::optional<Quantity> read = parse_quantity(node.text.substr(0, node.text.find(" to ")));
    if (read && read->is_length()) metric += node.text.ends_with('m') ? 1 : -1;
    for (const YamlNode& child : node.children) metric += metric_lengths(child);
    return metric;
}

// How the lengths of an entry, or of the whole file, are written, by most of them.
EntryUnit unit_of(const YamlNode& node) {
    return metric_lengths(node) > 0 ? EntryUnit::millimetre : EntryUnit::inch;
}

Rational step_of(EntryUnit unit) {
    return unit == EntryUnit::inch ? ratio(127, 320) : ratio(1, 2);
}

std::string text_of(const YamlNode& entry, std::string_view key) {
    const YamlNode* field = find_entry(entry, key);
    return field == nullptr ? std::string() : field->text;
}

template <typename Entry>
const Entry* named(const std::vector<Entry>& entries, const std::string& name) {
    const auto found = std::ranges::find(entries, name, &Entry::name);
    return found == entries.end() ? nullptr : &*found;
}

FileStyle style_of(std::string_view text, const YamlNode& root) {
    FileStyle style;
    style.text = text;
    const std::size_t first_end = text.find('\n');
    const bool carriage_return =
        first_end != std::string_view::npos && first_end > 0 && text[first_end - 1] == '\r';
    style.line_end = carriage_return ? "\r\n" : "\n";
    style.in_braces = is_flow(text, root);
    if (root.children.empty()) return style;
    style.key_column = style.in_braces ? 0 : column_of(text, root.children.front().key_span.begin);
    style.dash_column = style.key_column + 2;
    for (const YamlNode& list : root.children) {
        if (list.kind != YamlKind::list || is_flow(text, list)) continue;
        style.dash_column = column_of(text, list.span.begin);
        break;
    }
    return style;
}

class RackText {
  public:
    RackText(std::string_view text, const YamlNode& root, const Rack& rack, const RackChange& change);

    std::string after();

  private:
    void keep(const RackChange::Left& left);
    template <typename Entry>
    void keep_bought(const std::vector<Entry>& offcuts, std::vector<std::string>& texts);
    std::string free_name(const std::string& of);
    const YamlNode* list_of(std::string_view key) const;
    bool is_gone(const YamlNode& entry) const;
    void edit_counts(const YamlNode& list);
    void edit_list(std::string_view key, const std::vector<std::string>& added);
    void begin_list(std::string_view key, const std::vector<std::string>& added);
    const YamlNode* list_to_follow() const;

    FileStyle file_;
    const YamlNode& root_;
    const Rack& rack_;
    TextEdits edits_;
    std::map<std::string, const YamlNode*> entries_;
    std::map<std::string, int> stay_;  // how many of each entry
    std::set<std::string> names_;
    std::map<std::string, int> numbers_;    // the last given to an offcut of that name
    std::vector<std::string> boards_left_;  // entries as they are written
    std::vector<std::string> sheets_left_;
};

RackText::RackText(std::string_view text, const YamlNode& root, const Rack& rack, const RackChange& change)
    : file_(style_of(text, root)), root_(root), rack_(rack), edits_(text) {
    for (const std::string_view key : {"boards", "offcuts", "sheets"}) {
        const YamlNode* list = list_of(key);
        if (list == nullptr) continue;
        for (const YamlNode& entry : list->children) entries_[text_of(entry, "name")] = &entry;
    }
    for (const RackBoard& board : rack.boards) stay_[board.name] = board.count;
    for (const RackSheet& sheet : rack.sheets) stay_[sheet.name] = sheet.count;
    for (const auto& [name, count] : stay_) names_.insert(name);
    for (const RackChange::Used& used : change.used) {
        if (names_.count(used.name) == 1) stay_[used.name] -= std::min(used.count, stay_[used.name]);
    }
    for (const RackChange::Left& left : change.left) keep(left);
    keep_bought(change.left_of_bought, boards_left_);
    keep_bought(change.left_of_bought_sheets, sheets_left_);
}

const YamlNode* RackText::list_of(std::string_view key) const {
    const YamlNode* list = find_entry(root_, key);
    return list != nullptr && list->kind == YamlKind::list ? list : nullptr;
}

void RackText::keep(const RackChange::Left& left) {
    const auto entry = entries_.find(left.of);
    if (entry == entries_.end()) return;
    const EntryUnit unit = unit_of(*entry->second);
    const std::string thickness = text_of(*entry->second, "thickness");
    if (const RackBoard* board = named(rack_.boards, left.of)) {
        RackBoard offcut = offcut_of(*board, left, step_of(unit));
        offcut.name = free_name(left.of);
        boards_left_.push_back(entry_text(offcut, thickness, unit));
    } else if (const RackSheet* sheet = named(rack_.sheets, left.of)) {
        RackSheet offcut = offcut_of(*sheet, left);
        offcut.name = free_name(left.of);
        sheets_left_.push_back(entry_text(offcut, thickness, unit));
    }
}

template <typename Entry>
void RackText::keep_bought(const std::vector<Entry>& offcuts, std::vector<std::string>& texts) {
    const EntryUnit unit = unit_of(root_);
    for (Entry offcut : offcuts) {
        offcut.name = free_name("new");
        texts.push_back(entry_text(offcut, length_text(offcut.thickness, unit), unit));
    }
}

std::string RackText::free_name(const std::string& of) {
    constexpr std::size_t for_number = 8;
    std::size_t size = std::min(of.size(), longest_rack_name - for_number);
    // Not in the middle of a character.
    while (size < of.size() && (static_cast<unsigned char>(of[size]) & 0xC0U) == 0x80U) --size;
    int& number = numbers_[of];
    std::string name;
    do name = fmt::format("{}-{}", of.substr(0, size), ++number);
    while (!names_.insert(name).second);
    return name;
}

bool RackText::is_gone(const YamlNode& entry) const {
    const auto stay = stay_.find(text_of(entry, "name"));
    return stay != stay_.end() && stay->second == 0;
}

void RackText::edit_counts(const YamlNode& list) {
    for (const YamlNode& entry : list.children) {
        const YamlNode* count = find_entry(entry, "count");
        const auto stay = stay_.find(text_of(entry, "name"));
        if (count == nullptr || stay == stay_.end() || stay->second == 0) continue;
        const std::string now = std::to_string(stay->second);
        if (now != count->text) edits_.replace(count->span.begin, scalar_end(file_.text, *count), now);
    }
}

void RackText::edit_list(std::string_view key, const std::vector<std::string>& added) {
    if (const YamlNode* list = list_of(key)) {
        ListChange change{{}, added};
        for (const YamlNode& entry : list->children) change.gone.push_back(is_gone(entry));
        edit_counts(*list);
        (is_flow(file_.text, *list) ? edit_flow_list : edit_block_list)(file_, *list, change, edits_);
    } else if (!added.empty()) {
        begin_list(key, added);
    }
}

// Of the lists with entries, that of the boards before others.
const YamlNode* RackText::list_to_follow() const {
    for (const std::string_view key : {"boards", "sheets", "offcuts"}) {
        const YamlNode* list = list_of(key);
        if (list != nullptr && !list->children.empty()) return list;
    }
    return nullptr;
}

// Where the key stands without entries, else behind another list, else in front of everything.
void RackText::begin_list(std::string_view key, const std::vector<std::string>& added) {
    const YamlNode* before = list_to_follow();
    if (const YamlNode* empty = find_entry(root_, key)) {
        (file_.in_braces ? fill_flow_list : fill_block_list)(file_, *empty, added, edits_);
    } else if (before == nullptr) {
        (file_.in_braces ? lead_flow_list : lead_block_list)(file_, key, root_, added, edits_);
    } else if (file_.in_braces) {
        add_flow_list(file_, key, *before, added, edits_);
    } else {
        add_block_list(file_, key, *before, is_gone(before->children.back()), added, edits_);
    }
}

std::string RackText::after() {
    edit_list("boards", {});
    edit_list("offcuts", boards_left_);
    edit_list("sheets", sheets_left_);
    return edits_.applied();
}

}  // namespace

std::string rack_after(const std::string& text, const Rack& rack, const RackChange& change) {
    SourceManager sources;
    Diagnostics diagnostics;
    const std::optional<YamlNode> root = read_yaml(sources, sources.add("rack.yaml", text), diagnostics);
    if (!root || root->kind != YamlKind::map) return text;
    return RackText(text, *root, rack, change).after();
}

}  // namespace rodwright
