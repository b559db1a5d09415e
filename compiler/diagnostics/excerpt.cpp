#include "compiler/diagnostics/excerpt.hpp"

#include <algorithm>
#include <map>

#include "compiler/diagnostics/printable.hpp"

namespace rodwright {

namespace {

constexpr std::size_t widest = 100;  // columns of source shown of one line
constexpr std::size_t lead_in = 20;  // of these, before the first mark when the line is cut

// A mark in bytes of its line.
struct RawMark {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::string text;
    bool primary = false;
};

struct FileMarks {
    FileId file = FileId::none;
    std::uint32_t offset = 0;
    std::map<std::size_t, std::vector<RawMark>> by_line;
};

Span cut_to_text(Span span, std::string_view text) {
    const auto size = static_cast<std::uint32_t>(text.size());
    span.begin = std::min(span.begin, size);
    span.end = std::clamp(span.end, span.begin, size);
    return span;
}

std::size_t line_start(std::string_view text, std::size_t offset) {
    const std::size_t line_end = offset == 0 ? std::string_view::npos : text.rfind('\n', offset - 1);
    return line_end == std::string_view::npos ? 0 : line_end + 1;
}

void mark_one_line(FileMarks& marks, std::size_t line, RawMark mark) {
    marks.by_line[line].push_back(std::move(mark));
}

void mark_span(FileMarks& marks, const SourceManager& sources, Span span, const std::string& text,
               bool primary) {
    const std::string_view whole = sources.text(span.file);
    span = cut_to_text(span, whole);
    const std::uint32_t last_byte = span.end > span.begin ? span.end - 1 : span.begin;
    const std::size_t first = sources.position(span.file, span.begin).line;
    const std::size_t last = sources.position(span.file, last_byte).line;
    const std::size_t first_start = line_start(whole, span.begin);
    const std::size_t first_length = sources.line(span.file, first).size();
    if (first == last) {
        mark_one_line(marks, first, {span.begin - first_start, span.end - first_start, text, primary});
        return;
    }
    const std::size_t last_start = line_start(whole, last_byte);
    const std::size_t indent = whole.find_first_not_of(" \t", last_start) - last_start;
    mark_one_line(marks, first, {span.begin - first_start, first_length, "", primary});
    mark_one_line(marks, last,
                  {std::min(indent, span.end - last_start - 1), span.end - last_start, text, primary});
}

// Cuts the shown text to columns [from, from + widest) and says so with dots.
std::string cut_text(const std::string& text, std::size_t from) {
    const auto starts_character = [](char c) { return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U; };
    std::string cut = from > 0 ? "..." : "";
    std::size_t column = 0;
    for (const char c : text) {
        if (starts_character(c)) ++column;
        if (column > from + widest) return cut + "...";
        if (column > from) cut += c;
    }
    return cut;
}

Mark show_mark(const RawMark& raw, const Printable& line, std::size_t from) {
    const std::size_t size = line.column_of.size() - 1;
    const std::size_t begin = line.column_of[std::min(raw.begin, size)];
    const std::size_t end = line.column_of[std::min(raw.end, size)];
    const std::size_t dots = from > 0 ? 3 : 0;
    const std::size_t shown_begin = std::clamp(begin, from, from + widest);
    const std::size_t shown_end = std::clamp(end, shown_begin, from + widest);
    return {shown_begin - from + dots, std::max<std::size_t>(shown_end - shown_begin, 1), raw.text,
            raw.primary};
}

std::size_t window_start(const std::vector<RawMark>& marks, const Printable& line) {
    const std::size_t size = line.column_of.size() - 1;
    std::size_t leftmost = line.column_of.back();
    std::size_t rightmost = 0;
    for (const RawMark& mark : marks) {
        leftmost = std::min(leftmost, line.column_of[std::min(mark.begin, size)]);
        rightmost = std::max(rightmost, line.column_of[std::min(mark.end, size)]);
    }
    if (rightmost <= widest || leftmost <= lead_in) return 0;
    return leftmost - lead_in;
}

ExcerptLine show_line(std::size_t number, std::string_view text, const std::vector<RawMark>& marks) {
    const Printable line = make_printable(text);
    const std::size_t from = window_start(marks, line);
    ExcerptLine shown{number, cut_text(line.text, from), {}, false};
    for (const RawMark& mark : marks) shown.marks.push_back(show_mark(mark, line, from));
    std::stable_sort(shown.marks.begin(), shown.marks.end(),
                     [](const Mark& a, const Mark& b) { return a.column < b.column; });
    return shown;
}

Excerpt show_file(const FileMarks& marks, const SourceManager& sources) {
    Excerpt excerpt{marks.file, marks.offset, {}};
    for (const auto& [number, raw] : marks.by_line) {
        ExcerptLine line = show_line(number, sources.line(marks.file, number), raw);
        line.follows_gap = !excerpt.lines.empty() && excerpt.lines.back().number + 1 != number;
        excerpt.lines.push_back(std::move(line));
    }
    return excerpt;
}

FileMarks& marks_of(std::vector<FileMarks>& files, Span span) {
    const auto same_file = [&](const FileMarks& each) { return each.file == span.file; };
    const auto found = std::find_if(files.begin(), files.end(), same_file);
    if (found != files.end()) return *found;
    return files.emplace_back(FileMarks{span.file, span.begin, {}});
}

}  // namespace

bool is_known(const SourceManager& sources, FileId file) {
    return static_cast<std::size_t>(file) < sources.size();
}

std::vector<Excerpt> make_excerpts(const Diagnostic& diagnostic, const SourceManager& sources) {
    std::vector<FileMarks> files;
    const auto mark = [&](Span span, const std::string& text, bool primary) {
        if (is_known(sources, span.file)) mark_span(marks_of(files, span), sources, span, text, primary);
    };
    mark(diagnostic.primary, diagnostic.primary_text, true);
    for (const Label& label : diagnostic.labels) mark(label.span, label.text, false);
    std::vector<Excerpt> excerpts;
    for (const FileMarks& each : files) excerpts.push_back(show_file(each, sources));
    return excerpts;
}

}  // namespace rodwright
