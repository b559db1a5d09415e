#include <algorithm>

#include "compiler/stock/rack/list_edits.hpp"
#include "compiler/stock/rack/yaml_extent.hpp"

namespace rodwright {

namespace {

// Whole lines.
struct Lines {
    std::size_t begin = 0;
    std::size_t end = 0;
};

// The line with the dash of an entry, whose first key may stand on a later one.
std::size_t dash_line(std::string_view text, const YamlNode& entry) {
    std::size_t line = line_start(text, entry.span.begin);
    const std::string_view before = text.substr(line, entry.span.begin - line);
    if (before.find('-') != std::string_view::npos) return line;
    do line = line_start(text, line - 1);
    while (text[std::min(text.find_first_not_of(' ', line), text.size() - 1)] != '-');
    return line;
}

std::vector<Lines> lines_of_entries(std::string_view text, const YamlNode& list) {
    const std::size_t column = column_of(text, list.span.begin);
    std::size_t lowest = next_line(text, list.key_span.begin);
    std::vector<Lines> all;
    for (const YamlNode& entry : list.children) {
        const std::size_t begin = comments_above(text, dash_line(text, entry), lowest, column);
        lowest = lines_end(text, entry, column);
        all.push_back({begin, lowest});
    }
    return all;
}

// In front of `at`, where lines begin; at the end of a file without a last line end it needs one.
void insert_lines(const FileStyle& file, std::size_t at, std::string lines, TextEdits& edits) {
    const bool line_is_open = at > 0 && at == file.text.size() && file.text[at - 1] != '\n';
    if (line_is_open) {
        lines.erase(lines.size() - file.line_end.size());
        lines.insert(0, file.line_end);
    }
    edits.insert(at, lines);
}

// Where lines are put behind a list; in front of a last entry that goes, so that what stays of the text ends
// there with a line end.
std::size_t behind_entries(const Lines& last, bool last_gone) {
    return last_gone ? last.begin : last.end;
}

// Lines `- {...}`.
std::string dashed_lines(const FileStyle& file, std::size_t column, const std::vector<std::string>& added) {
    std::string lines;
    for (const std::string& entry : added) {
        lines.append(column, ' ').append("- ").append(indented(file, entry, column)).append(file.line_end);
    }
    return lines;
}

// `key:` with its entries below.
std::string list_lines(const FileStyle& file, std::string_view key, const std::vector<std::string>& added) {
    return std::string(file.key_column, ' ').append(key).append(":").append(file.line_end) +
           dashed_lines(file, file.dash_column, added);
}

}  // namespace

std::string indented(const FileStyle& file, const std::string& entry, std::size_t column) {
    std::string text;
    for (const char c : entry) {
        if (c == '\n') {
            text.append(file.line_end).append(column + 2, ' ');
        } else {
            text += c;
        }
    }
    return text;
}

void edit_block_list(const FileStyle& file, const YamlNode& list, const ListChange& change,
                     TextEdits& edits) {
    const std::vector<Lines> entries = lines_of_entries(file.text, list);
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (change.gone[i]) edits.remove(entries[i].begin, entries[i].end);
    }
    if (change.added.empty()) return;
    const std::size_t column = column_of(file.text, list.span.begin);
    insert_lines(file, behind_entries(entries.back(), change.gone.back()),
                 dashed_lines(file, column, change.added), edits);
}

// Set apart by a blank line where the list before it is.
void add_block_list(const FileStyle& file, std::string_view key, const YamlNode& before, bool last_gone,
                    const std::vector<std::string>& added, TextEdits& edits) {
    std::string lines = list_lines(file, key, added);
    Lines last;
    if (is_flow(file.text, before)) {
        last.end = next_line(file.text, flow_end(file.text, before.span.begin));
        last_gone = false;
    } else {
        last = lines_of_entries(file.text, before).back();
    }
    const std::size_t at = behind_entries(last, last_gone);
    const bool blank_follows = last.end < file.text.size() && is_blank_line(file.text, last.end);
    const bool blank_before = is_blank_line(file.text, line_start(file.text, at - 1));
    if (blank_follows && !blank_before) lines.insert(0, file.line_end);
    insert_lines(file, at, std::move(lines), edits);
}

void lead_block_list(const FileStyle& file, std::string_view key, const YamlNode& root,
                     const std::vector<std::string>& added, TextEdits& edits) {
    const std::size_t first = root.children.front().key_span.begin;
    edits.insert(first - column_of(file.text, first), list_lines(file, key, added));
}

void fill_block_list(const FileStyle& file, const YamlNode& key, const std::vector<std::string>& added,
                     TextEdits& edits) {
    const std::size_t colon = colon_behind(file.text, key);
    std::string lines = dashed_lines(file, file.dash_column, added);
    if (colon < file.text.size() && file.text[colon] == ':') {
        const std::size_t value = skip_blank(file.text, colon + 1);
        edits.remove(value, value + no_value_size(file.text, value));
        insert_lines(file, next_line(file.text, colon), std::move(lines), edits);
    } else {  // `? offcuts`
        lines.insert(0, std::string(file.key_column, ' ').append(":").append(file.line_end));
        insert_lines(file, next_line(file.text, key.key_span.begin), std::move(lines), edits);
    }
}

}  // namespace rodwright
