// The lines of source that stand below a message, with the marks under them. Knows nothing of colour.
#pragma once

#include <string>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

struct Mark {
    std::size_t column = 0;  // in the shown text, from zero
    std::size_t length = 1;
    std::string text;
    bool primary = false;
};

struct ExcerptLine {
    std::size_t number = 0;
    std::string text;  // as shown: tabs widened, cut to a window around the marks
    std::vector<Mark> marks;
    bool follows_gap = false;  // lines between the one before and this are left out
};

// What is shown of one file, in the order of its lines.
struct Excerpt {
    FileId file = FileId::none;
    std::uint32_t offset = 0;  // the place to name above it
    std::vector<ExcerptLine> lines;
};

// One excerpt a file, that of the primary span first. A span over several lines is shown by its first and
// last. Spans in no file are passed over; spans that reach past the text are cut.
std::vector<Excerpt> make_excerpts(const Diagnostic& diagnostic, const SourceManager& sources);

// Whether `file` is one of `sources`.
bool is_known(const SourceManager& sources, FileId file);

}  // namespace rodwright
