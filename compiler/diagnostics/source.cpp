#include "compiler/diagnostics/source.hpp"

#include <algorithm>

namespace rodwright {

FileId SourceManager::add(std::string name, std::string text, bool library) {
    File file{std::move(name), std::move(text), library, {0}};
    for (std::size_t i = 0; i < file.text.size(); ++i) {
        if (file.text[i] == '\n') file.line_starts.push_back(static_cast<std::uint32_t>(i + 1));
    }
    files_.push_back(std::move(file));
    return static_cast<FileId>(files_.size() - 1);
}

const SourceManager::File& SourceManager::file(FileId id) const {
    return files_.at(static_cast<std::size_t>(id));
}

const std::string& SourceManager::name(FileId id) const {
    return file(id).name;
}

std::string_view SourceManager::text(FileId id) const {
    return file(id).text;
}

std::string_view SourceManager::text(Span span) const {
    return text(span.file).substr(span.begin, span.end - span.begin);
}

bool SourceManager::is_library(FileId id) const {
    return id != FileId::none && file(id).library;
}

Position SourceManager::position(FileId id, std::uint32_t offset) const {
    const File& source = file(id);
    const auto after = std::upper_bound(source.line_starts.begin(), source.line_starts.end(), offset);
    const std::uint32_t start = *(after - 1);
    const auto is_character = [](char c) { return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U; };
    const std::size_t end = std::min<std::size_t>(offset, source.text.size());
    const auto characters = std::count_if(
        source.text.begin() + start, source.text.begin() + static_cast<std::ptrdiff_t>(end), is_character);
    return {static_cast<std::size_t>(after - source.line_starts.begin()),
            static_cast<std::size_t>(characters) + 1};
}

std::string_view SourceManager::line(FileId id, std::size_t number) const {
    const File& source = file(id);
    if (number == 0 || number > source.line_starts.size()) return {};
    const std::size_t begin = source.line_starts[number - 1];
    std::string_view rest = std::string_view(source.text).substr(begin);
    rest = rest.substr(0, rest.find('\n'));
    if (!rest.empty() && rest.back() == '\r') rest.remove_suffix(1);
    return rest;
}

}  // namespace rodwright
