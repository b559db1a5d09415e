#include <algorithm>
#include <optional>

#include "compiler/stock/rack/list_edits.hpp"
#include "compiler/stock/rack/yaml_extent.hpp"

namespace rodwright {

namespace {

struct FlowEntry {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::optional<std::size_t> comma;  // behind it

    std::size_t past_comma() const { return comma ? *comma + 1 : end; }
};

std::vector<FlowEntry> entries_of(std::string_view text, const YamlNode& list) {
    std::vector<FlowEntry> entries;
    for (const YamlNode& node : list.children) {
        FlowEntry entry{node.span.begin, flow_end(text, node.span.begin), std::nullopt};
        const std::size_t next = skip_blank(text, entry.end);
        if (next < text.size() && text[next] == ',') entry.comma = next;
        entries.push_back(entry);
    }
    return entries;
}

bool begins_line(std::string_view text, std::size_t at) {
    return text.find_first_not_of(' ', line_start(text, at)) == at;
}

// Whether nothing but a comment follows in this line of a list that does not end there.
bool ends_line(std::string_view text, std::size_t at, std::size_t list_end) {
    return rest_is_blank(text, at) && next_line(text, at) < list_end;
}

// `lowest` is where what stands in front of the entry ends.
void remove_entry(std::string_view text, const FlowEntry& entry, std::size_t lowest, std::size_t list_end,
                  TextEdits& edits) {
    const std::size_t past = entry.past_comma();
    const bool comma_beside = line_start(text, past) <= entry.end;
    if (begins_line(text, entry.begin) && comma_beside && ends_line(text, past, list_end)) {
        const std::size_t line = line_start(text, entry.begin);
        edits.remove(comments_above(text, line, next_line(text, lowest), entry.begin - line),
                     next_line(text, past));
        return;
    }
    edits.remove(entry.begin, entry.end);
    if (entry.comma) edits.remove(*entry.comma, text.find_first_not_of(' ', past));
}

// Where all that follow the last entry that stays go, and nothing stands between them, its comma goes too.
void remove_comma_before_end(std::string_view text, const std::vector<FlowEntry>& entries,
                             const std::vector<bool>& gone, TextEdits& edits) {
    std::size_t first = entries.size();
    while (first > 0 && gone[first - 1]) --first;
    if (first == 0 || first == entries.size()) return;
    for (std::size_t i = first; i < entries.size(); ++i) {
        const std::size_t from = entries[i - 1].end;
        if (text.substr(from, entries[i].begin - from).find_first_not_of(" ,") != std::string_view::npos)
            return;
    }
    edits.remove(entries[first - 1].end, entries[first].begin);
}

// Entries on lines of their own from `at` on, which is where a line begins, or ends.
std::string entry_lines(const FileStyle& file, std::size_t column, const std::vector<std::string>& added,
                        bool line_begins, bool comma_last) {
    std::string lines;
    for (std::size_t i = 0; i < added.size(); ++i) {
        if (!line_begins) lines.append(file.line_end);
        lines.append(column, ' ').append(indented(file, added[i], column - std::min<std::size_t>(column, 2)));
        if (comma_last || i + 1 < added.size()) lines += ',';
        if (line_begins) lines.append(file.line_end);
    }
    return lines;
}

std::string bracketed(const FileStyle& file, const std::vector<std::string>& added) {
    return "[" + entry_lines(file, file.key_column + 2, added, false, false) + "]";
}

// How far in the entries of a list stand that begin a line.
std::size_t entry_column(const FileStyle& file, const std::vector<FlowEntry>& entries) {
    const auto found = std::ranges::find_if(
        entries, [&](const FlowEntry& entry) { return begins_line(file.text, entry.begin); });
    return found == entries.end() ? file.key_column + 2 : column_of(file.text, found->begin);
}

void add_entries(const FileStyle& file, const YamlNode& list, const std::vector<FlowEntry>& entries,
                 const ListChange& change, TextEdits& edits) {
    const FlowEntry* last_kept = nullptr;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (!change.gone[i]) last_kept = &entries[i];
    }
    if (last_kept != nullptr && !last_kept->comma) edits.insert(last_kept->end, ",");
    const std::size_t behind = last_kept != nullptr ? last_kept->past_comma() : list.span.begin + 1;
    const bool own_lines = ends_line(file.text, behind, flow_end(file.text, list.span.begin));
    const bool comma_last = !entries.empty() && entries.back().comma.has_value();
    edits.insert(own_lines ? next_line(file.text, behind) : behind,
                 entry_lines(file, entry_column(file, entries), change.added, own_lines, comma_last));
}

}  // namespace

void edit_flow_list(const FileStyle& file, const YamlNode& list, const ListChange& change, TextEdits& edits) {
    const std::vector<FlowEntry> entries = entries_of(file.text, list);
    const std::size_t list_end = flow_end(file.text, list.span.begin);
    std::size_t lowest = list.span.begin;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (change.gone[i]) remove_entry(file.text, entries[i], lowest, list_end, edits);
        lowest = entries[i].past_comma();
    }
    if (change.added.empty()) {
        remove_comma_before_end(file.text, entries, change.gone, edits);
    } else {
        add_entries(file, list, entries, change, edits);
    }
}

void fill_flow_list(const FileStyle& file, const YamlNode& key, const std::vector<std::string>& added,
                    TextEdits& edits) {
    const std::size_t colon = colon_behind(file.text, key);
    if (file.text[colon] == ':') {
        const std::size_t value = skip_blank(file.text, colon + 1);
        edits.remove(value, value + no_value_size(file.text, value));
        edits.insert(colon + 1, " " + bracketed(file, added));
    } else {
        edits.insert(colon, ": " + bracketed(file, added));
    }
}

void add_flow_list(const FileStyle& file, std::string_view key, const YamlNode& before,
                   const std::vector<std::string>& added, TextEdits& edits) {
    edits.insert(flow_end(file.text, before.span.begin),
                 std::string(", ").append(key).append(": ") + bracketed(file, added));
}

void lead_flow_list(const FileStyle& file, std::string_view key, const YamlNode& root,
                    const std::vector<std::string>& added, TextEdits& edits) {
    edits.insert(root.span.begin + 1, std::string(key).append(": ") + bracketed(file, added) + ", ");
}

}  // namespace rodwright
