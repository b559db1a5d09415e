// The milling data that comes with the program, and a maker's own laid over it.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "compiler/stdlib.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright::testing {

inline const std::string& library_text(const std::string& path) {
    const auto& files = stdlib_files();
    const auto file = std::ranges::find(files, path, &EmbeddedFile::path);
    REQUIRE(file != files.end());
    return file->text;
}

inline const std::string& library_milling_text() {
    return library_text("data/milling.yaml");
}

inline WoodTable library_woods() {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("woods.yaml", library_text("data/woods.yaml"));
    std::optional<WoodTable> woods = read_woods(sources, file, diagnostics);
    REQUIRE_MESSAGE(woods, diagnostics.list().front().message);
    return *woods;
}

inline MillingData library_milling() {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("milling.yaml", library_milling_text());
    std::optional<MillingData> data = read_milling(sources, file, library_woods(), diagnostics);
    REQUIRE_MESSAGE(data, diagnostics.list().front().message);
    return *data;
}

// `text` laid over the library's.
inline MillingData own_milling(const std::string& text) {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("milling.yaml", text);
    std::optional<MillingData> data =
        overlay_milling(library_milling(), sources, file, library_woods(), diagnostics);
    REQUIRE_MESSAGE(data, diagnostics.list().front().message);
    return *data;
}

}  // namespace rodwright::testing
