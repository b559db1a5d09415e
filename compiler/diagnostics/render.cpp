#include "compiler/diagnostics/render.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/diagnostics/excerpt.hpp"
#include "compiler/diagnostics/printable.hpp"

namespace rodwright {

namespace {

// ECMA-48 "select graphic rendition" parameters.
constexpr std::string_view strong = "1";
constexpr std::string_view faint = "2";
constexpr std::string_view cyan = "36";

std::string_view colour_of(Severity severity) {
    switch (severity) {
        case Severity::error:
            return "1;31";
        case Severity::warning:
            return "1;33";
        case Severity::note:
            break;
    }
    return "1;36";
}

class Painter {
  public:
    explicit Painter(bool colour) : colour_(colour) {}
    std::string operator()(std::string_view style, std::string_view text) const {
        return colour_ ? fmt::format("\x1b[{}m{}\x1b[0m", style, text) : std::string(text);
    }

  private:
    bool colour_;
};

std::string safe(std::string_view text) {
    return make_printable(text).text;
}

std::string place(const SourceManager& sources, FileId file, std::uint32_t offset, bool with_column) {
    const Position position = sources.position(file, offset);
    const std::string line = fmt::format("{}:{}", safe(sources.name(file)), position.line);
    return with_column ? fmt::format("{}:{}", line, position.column) : line;
}

std::string heading(const Diagnostic& diagnostic, const Painter& paint) {
    const std::string kind = fmt::format("{}{}[{}]", diagnostic.accepted.empty() ? "" : "accepted ",
                                         severity_word(diagnostic.severity), info(diagnostic.code).code);
    return fmt::format("{}: {}\n", paint(colour_of(diagnostic.severity), kind),
                       paint(strong, safe(diagnostic.message)));
}

// Marks of one line stand side by side under it where only the last has words, else one below the other.
std::string mark_rows(const ExcerptLine& line, const std::string& margin, std::string_view style,
                      const Painter& paint) {
    std::string rows;
    std::size_t at = 0;
    for (const Mark& mark : line.marks) {
        const bool same_row = at > 0 && mark.column >= at && rows.back() != '\n';
        if (!same_row) {
            if (!rows.empty() && rows.back() != '\n') rows += '\n';
            rows += margin;
            at = 0;
        }
        rows.append(mark.column - at, ' ');
        rows += paint(mark.primary ? style : cyan, std::string(mark.length, mark.primary ? '^' : '~'));
        at = mark.column + mark.length;
        if (!mark.text.empty()) rows += ' ' + paint(mark.primary ? style : cyan, safe(mark.text)) + '\n';
    }
    if (!rows.empty() && rows.back() != '\n') rows += '\n';
    return rows;
}

std::string excerpt_text(const Excerpt& excerpt, const SourceManager& sources, std::string_view style,
                         const Painter& paint) {
    std::string text = fmt::format("  {}\n", place(sources, excerpt.file, excerpt.offset, true));
    const std::size_t width = std::to_string(excerpt.lines.back().number).size();
    const std::string margin = paint(faint, fmt::format("    {:{}} | ", "", width));
    for (const ExcerptLine& line : excerpt.lines) {
        if (line.follows_gap) text += paint(faint, fmt::format("    {:{}} :", "", width)) + '\n';
        const std::string shown = paint(faint, fmt::format("    {:{}} | ", line.number, width)) + line.text;
        text += shown.substr(0, shown.find_last_not_of(' ') + 1) + '\n';
        text += mark_rows(line, margin, style, paint);
    }
    return text;
}

std::string trace_line(const Label& step, const SourceManager& sources) {
    const std::string words = safe(step.text);
    if (!is_known(sources, step.span.file)) return fmt::format("  {}\n", words);
    return fmt::format("  {} at {}\n", words, place(sources, step.span.file, step.span.begin, false));
}

std::string counted(std::size_t count, std::string_view word) {
    return fmt::format("{} {}{}", count, word, count == 1 ? "" : "s");
}

}  // namespace

std::string_view severity_word(Severity severity) {
    switch (severity) {
        case Severity::error:
            return "error";
        case Severity::warning:
            return "warning";
        case Severity::note:
            break;
    }
    return "note";
}

std::string render(const Diagnostic& diagnostic, const SourceManager& sources, bool colour) {
    const Painter paint(colour);
    std::string text = heading(diagnostic, paint);
    const std::string_view style = colour_of(diagnostic.severity);
    for (const Excerpt& excerpt : make_excerpts(diagnostic, sources)) {
        text += excerpt_text(excerpt, sources, style, paint);
    }
    // A label in no file has no line to stand under, but its words still count.
    for (const Label& label : diagnostic.labels) {
        if (!is_known(sources, label.span.file)) text += fmt::format("  {}\n", safe(label.text));
    }
    if (!diagnostic.accepted.empty())
        text += fmt::format("  {}: {}\n", paint(cyan, "accepted because"), safe(diagnostic.accepted));
    for (const std::string& note : diagnostic.notes) {
        text += fmt::format("  {}: {}\n", paint(cyan, "note"), safe(note));
    }
    if (!diagnostic.help.empty()) {
        text += fmt::format("  {}: {}\n", paint(cyan, "help"), safe(diagnostic.help));
    }
    for (const Label& step : diagnostic.trace) text += trace_line(step, sources);
    return text;
}

std::string summary(const Diagnostics& diagnostics) {
    std::size_t warnings = 0;
    std::size_t notes = 0;
    std::size_t accepted = 0;
    for (const Diagnostic& each : diagnostics.list()) {
        if (!each.accepted.empty()) {
            ++accepted;
        } else if (each.severity == Severity::warning) {
            ++warnings;
        } else if (each.severity == Severity::note) {
            ++notes;
        }
    }
    std::string text;
    if (diagnostics.errors() > 0) text = counted(diagnostics.errors(), "error");
    if (warnings > 0) text += (text.empty() ? "" : ", ") + counted(warnings, "warning");
    if (notes > 0) text += (text.empty() ? "" : ", ") + counted(notes, "note");
    if (accepted > 0) text += fmt::format("{}{} accepted", text.empty() ? "" : ", ", accepted);
    if (diagnostics.more() > 0) text += fmt::format(" ({} not shown)", diagnostics.more());
    return text;
}

}  // namespace rodwright
