// What rodwright tells the maker: one value, rendered elsewhere (render.hpp) for a terminal or as JSON.
//
// Wording: lower-case start, no full stop, names in `backticks`; first what was observed, then in `help` what
// to write. Codes live in codes.def and stay for ever; each has a page that `rodwright explain CODE` prints.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compiler/diagnostics/source.hpp"

namespace rodwright {

enum class Severity { note, warning, error };

enum class Code {
#define RODWRIGHT_CODE(id, code, severity, title) id,
#include "compiler/diagnostics/codes.def"
#undef RODWRIGHT_CODE
};

struct CodeInfo {
    Code id;
    std::string_view code;     // "E0301"
    Severity severity;         // what it is unless a diagnostic says otherwise
    std::string_view title;    // one line, for lists
    std::string_view id_name;  // the enumerator, for tests
};

const std::vector<CodeInfo>& all_codes();
const CodeInfo& info(Code code);
// The code spelled as in CodeInfo::code, in any case; null if there is none.
const CodeInfo* find_code(std::string_view spelled);

struct Label {
    Span span;
    std::string text;
};

struct Diagnostic {
    Code code{};
    Severity severity = Severity::error;
    std::string message;
    Span primary;                    // file `none` where no text is to blame
    std::string primary_text;        // stands beside the carets; may be empty
    std::vector<Label> labels;       // further places
    std::vector<std::string> notes;  // more facts
    std::string help;                // what to write
    std::vector<Label> trace;        // "in joint housing", innermost first
    // Why the design accepts it. Then it is neither error nor warning any more, whatever its severity.
    std::string accepted = {};

    Diagnostic&& label(Span span, std::string text) &&;
    Diagnostic&& note(std::string text) &&;
    Diagnostic&& hint(std::string text) &&;
    Diagnostic&& at(std::string text) &&;
};

// A diagnostic with the severity that its code has by default.
Diagnostic diagnose(Code code, Span primary, std::string message);

// Collects what one run has to say. Repeats of the same code at the same place are dropped, and past
// limits::diagnostics nothing more is kept (`more()` counts it).
class Diagnostics {
  public:
    void add(Diagnostic diagnostic);
    const std::vector<Diagnostic>& list() const { return list_; }
    // Worst first: errors by file and place in it, then warnings, notes and what is accepted, in the order of
    // discovery.
    std::vector<Diagnostic> sorted() const;
    std::size_t errors() const { return errors_; }
    std::size_t more() const { return more_; }
    // No further error is kept, so that nobody need work out more of one than that it is there.
    bool full() const;
    bool ok() const { return errors_ == 0; }

  private:
    std::vector<Diagnostic> list_;
    std::size_t errors_ = 0;
    std::size_t more_ = 0;
};

// The candidate nearest to `name` (same letters in another case first, then an edit distance of at most a
// third of the name's length), or empty. Candidates are tried in sorted order, so the answer is stable.
std::string nearest_name(std::string_view name, std::vector<std::string> candidates);

}  // namespace rodwright
