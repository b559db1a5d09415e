// The project's own files, for tests of how it is laid out.
#pragma once

#include <string>
#include <vector>

namespace rodwright::testing {

struct SourceFile {
    std::string path;  // from the top folder: "compiler/world.hpp"
    std::string text;
};

// The file at `path`; throws if it cannot be read.
SourceFile source_file(const std::string& path);

// Files at any depth below `folders` whose names end in one of `endings`, sorted by path.
std::vector<SourceFile> source_files(const std::vector<std::string>& folders,
                                     const std::vector<std::string>& endings);

// Names of what is in a folder and not hidden, without the folder itself, sorted.
std::vector<std::string> entries_of(const std::string& folder);

std::vector<std::string> lines_of(const std::string& text);

// A fenced block of a Markdown page: the word after the opening fence and the text between.
struct Fence {
    std::string language;  // "rod"
    std::string text;
    std::size_t line = 0;  // of the opening fence, from one
};
std::vector<Fence> fences_of(const std::string& markdown);

}  // namespace rodwright::testing
