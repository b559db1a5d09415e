#include "compiler/graph/phrase.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {

namespace {

using NamedPart = Phrase::NamedPart;

template <typename NameOf>
std::string read(const Phrase& phrase, const LengthStyle& style, NameOf name_of) {
    std::string text;
    for (const Phrase::Word& word : phrase.words) {
        if (const auto* plain = std::get_if<std::string>(&word)) text += *plain;
        if (const auto* quantity = std::get_if<Quantity>(&word)) text += format_quantity(*quantity, style);
        if (const auto* part = std::get_if<NamedPart>(&word)) text += name_of(*part);
    }
    return text;
}

}  // namespace

Phrase& operator<<(Phrase& phrase, const std::string& words) {
    phrase.words.emplace_back(words);
    return phrase;
}

Phrase& operator<<(Phrase& phrase, const Quantity& quantity) {
    phrase.words.emplace_back(quantity);
    return phrase;
}

std::string read_out(const Phrase& phrase, const LengthStyle& style) {
    return read(phrase, style, [](const NamedPart& named) { return named.part; });
}

std::string read_by_role(const Phrase& phrase, const LengthStyle& style) {
    return read(phrase, style, [](const NamedPart& named) { return fmt::format("{{{}}}", named.role); });
}

std::vector<NamedPart> parts_named(const Phrase& phrase) {
    std::vector<NamedPart> parts;
    for (const Phrase::Word& word : phrase.words) {
        const auto* part = std::get_if<NamedPart>(&word);
        if (part != nullptr && std::ranges::find(parts, *part) == parts.end()) parts.push_back(*part);
    }
    return parts;
}

std::size_t size_of(const Phrase& phrase) {
    std::size_t size = 0;
    for (const Phrase::Word& word : phrase.words) {
        const auto* plain = std::get_if<std::string>(&word);
        size += sizeof(word) + (plain == nullptr ? 0 : plain->size());
    }
    return size;
}

}  // namespace rodwright
