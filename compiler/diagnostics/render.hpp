// Diagnostics as text for a terminal and as JSON for programs.
#pragma once

#include <string>

#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

// Several lines, each with its line end:
//   error[E0302]: two lines of the design disagree about `rail.left`
//     table.rod:12:5
//       12 |     left = leg.right
//          |     ^^^^ 3 in by this line
//     note: ...
//     help: ...
//     in joint `housing`, used by the join at table.rod:30
// The primary span is marked with ^, the others with ~. `colour` adds ANSI escape sequences (ECMA-48).
// Takes any span, also of a file that is not in `sources`.
std::string render(const Diagnostic& diagnostic, const SourceManager& sources, bool colour);

// One line, one JSON object (RFC 8259) with the keys file, line, column, end, code, severity, message, text,
// labels, notes, help, trace, in this order; file, line, column and end are null where no text is to blame.
// Of one that the design accepts `accepted` follows, the reason.
std::string render_json(const Diagnostic& diagnostic, const SourceManager& sources);

// "2 errors, 1 warning, 1 note, 1 accepted", with what is not shown; empty if there is nothing to say.
std::string summary(const Diagnostics& diagnostics);

// "error", "warning", "note".
std::string_view severity_word(Severity severity);

}  // namespace rodwright
