// The milling data that comes with the program, and a maker's own laid over it.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "compiler/stdlib.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright::testing {

inline const std::string& library_milling_text() {
    const auto& files = stdlib_files();
    const auto file = std::ranges::find(files, "data/milling.yaml", &EmbeddedFile::path);
    REQUIRE(file != files.end());
    return file->text;
}

inline MillingData library_milling() {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("milling.yaml", library_milling_text());
    std::optional<MillingData> data = read_milling(sources, file, diagnostics);
    REQUIRE_MESSAGE(data, diagnostics.list().front().message);
    return *data;
}

// `text` laid over the library's.
inline MillingData own_milling(const std::string& text) {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("milling.yaml", text);
    std::optional<MillingData> data = overlay_milling(library_milling(), sources, file, diagnostics);
    REQUIRE_MESSAGE(data, diagnostics.list().front().message);
    return *data;
}

}  // namespace rodwright::testing
