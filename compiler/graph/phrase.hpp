// A text of a joint's or shape's definition before anyone reads it: its sizes are still quantities, so that
// sheets in millimetres and in inches read the same definition, and the parts that it names stand by role.
#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "compiler/quantity/format.hpp"

namespace rodwright {

struct Phrase {
    struct NamedPart {
        std::string role;  // "tenon"
        std::string part;  // "side apron"
        friend bool operator==(const NamedPart&, const NamedPart&) = default;
    };
    using Word = std::variant<std::string, Quantity, NamedPart>;

    std::vector<Word> words;

    Phrase() = default;
    Phrase(std::string text) { words.emplace_back(std::move(text)); }
    Phrase(const char* text) : Phrase(std::string(text)) {}
    friend bool operator==(const Phrase&, const Phrase&) = default;
};

Phrase& operator<<(Phrase& phrase, const std::string& words);
Phrase& operator<<(Phrase& phrase, const Quantity& quantity);

// "Mark the shoulders 7/8" from the end of side apron."
std::string read_out(const Phrase& phrase, const LengthStyle& style);

// The same with roles in place of parts: "Mark the shoulders 7/8" from the end of {tenon}."
std::string read_by_role(const Phrase& phrase, const LengthStyle& style);

// The parts that it names, each once, in the order in which they are first named.
std::vector<Phrase::NamedPart> parts_named(const Phrase& phrase);

// Bytes that it takes, about.
std::size_t size_of(const Phrase& phrase);

}  // namespace rodwright
