// Source text and places in it.
//
// Every stage points into text with a Span: a file id and a half-open byte range. Line and column exist
// only where a person reads them (SourceManager::position).
#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

namespace rodwright {

// Index of a file in a SourceManager. `none` marks a place that is in no file (the command line).
enum class FileId : std::uint32_t { none = 0xffffffffU };

// Bytes [begin, end) of one file.
struct Span {
    FileId file = FileId::none;
    std::uint32_t begin = 0;
    std::uint32_t end = 0;

    friend bool operator==(const Span&, const Span&) = default;
};

// From the start of `first` to the end of `last`, which are in the same file.
inline Span join(Span first, Span last) {
    return {first.file, first.begin, last.end};
}

// One-based; the column counts characters (UTF-8 code points), not bytes.
struct Position {
    std::size_t line = 0;
    std::size_t column = 0;
};

// Owns the text of every file read in one run; the text stays where it is until the manager is destroyed.
class SourceManager {
  public:
    // `name` is shown in messages. `library` marks text of the stdlib.
    FileId add(std::string name, std::string text, bool library = false);

    const std::string& name(FileId file) const;
    std::string_view text(FileId file) const;
    std::string_view text(Span span) const;
    bool is_library(FileId file) const;
    Position position(FileId file, std::uint32_t offset) const;
    // The line, counted from one, without its line end; empty if there is none.
    std::string_view line(FileId file, std::size_t number) const;
    std::size_t size() const { return files_.size(); }

  private:
    struct File {
        std::string name;
        std::string text;
        bool library = false;
        std::vector<std::uint32_t> line_starts;
    };
    const File& file(FileId id) const;

    std::deque<File> files_;
};

}  // namespace rodwright
