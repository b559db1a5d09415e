#include "compiler/diagnostics/diagnostic.hpp"

#include <algorithm>
#include <tuple>

#include "compiler/limits.hpp"

namespace rodwright {

Diagnostic&& Diagnostic::label(Span span, std::string text) && {
    labels.push_back({span, std::move(text)});
    return std::move(*this);
}

Diagnostic&& Diagnostic::note(std::string text) && {
    notes.push_back(std::move(text));
    return std::move(*this);
}

Diagnostic&& Diagnostic::hint(std::string text) && {
    help = std::move(text);
    return std::move(*this);
}

Diagnostic&& Diagnostic::at(std::string text) && {
    primary_text = std::move(text);
    return std::move(*this);
}

Diagnostic diagnose(Code code, Span primary, std::string message) {
    Diagnostic made;
    made.code = code;
    made.severity = info(code).severity;
    made.message = std::move(message);
    made.primary = primary;
    return made;
}

// The same line of a joint is another place in each join that uses it, so the trace counts. What is in no
// file has no place but its message.
static bool same_place(const Diagnostic& a, const Diagnostic& b) {
    if (a.code != b.code || a.primary != b.primary) return false;
    if (a.primary.file == FileId::none && a.message != b.message) return false;
    return std::equal(a.trace.begin(), a.trace.end(), b.trace.begin(), b.trace.end(),
                      [](const Label& x, const Label& y) { return x.span == y.span; });
}

static bool is_error(const Diagnostic& diagnostic) {
    return diagnostic.severity == Severity::error && diagnostic.accepted.empty();
}

// A list that is full of warnings still has room for the error that stops the run.
static void replace_last_warning(std::vector<Diagnostic>& list, Diagnostic& diagnostic) {
    if (!is_error(diagnostic)) return;
    const auto last = std::find_if_not(list.rbegin(), list.rend(), is_error);
    if (last == list.rend()) return;
    list.erase(std::next(last).base());
    list.push_back(std::move(diagnostic));
}

bool Diagnostics::full() const {
    return errors_ >= limits::diagnostics;
}

void Diagnostics::add(Diagnostic diagnostic) {
    const auto is_repeat = [&](const Diagnostic& kept) { return same_place(kept, diagnostic); };
    if (std::any_of(list_.begin(), list_.end(), is_repeat)) return;
    if (is_error(diagnostic)) ++errors_;
    if (list_.size() < limits::diagnostics) {
        list_.push_back(std::move(diagnostic));
        return;
    }
    ++more_;
    replace_last_warning(list_, diagnostic);
}

std::vector<Diagnostic> Diagnostics::sorted() const {
    const auto rank = [](const Diagnostic& each) {
        const int severity = each.accepted.empty() ? -static_cast<int>(each.severity) : 1;
        return is_error(each) ? std::make_tuple(severity, each.primary.file, each.primary.begin)
                              : std::make_tuple(severity, FileId{}, std::uint32_t{});
    };
    std::vector<Diagnostic> ordered = list_;
    std::stable_sort(ordered.begin(), ordered.end(),
                     [&](const Diagnostic& a, const Diagnostic& b) { return rank(a) < rank(b); });
    return ordered;
}

}  // namespace rodwright
