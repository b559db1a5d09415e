// Texts that are the same but for the parts that they name, made one.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "compiler/graph/phrase.hpp"

namespace rodwright {

using NamedParts = std::map<std::string, std::vector<std::string>>;  // by role

void add_names(NamedParts& named, const NamedParts& more);
NamedParts named_in(const Phrase& phrase);

// The phrase with every part that each role stands for: "Try rail or stretcher in leg dry."
Phrase with_names(const Phrase& phrase, const NamedParts& named);

class RoleNames {
  public:
    explicit RoleNames(const LengthStyle& style) : style_(style) {}

    void add(const std::string& heading, const Phrase& text);
    // In the order in which they were first added, each with its heading before it.
    std::vector<Phrase> take();

  private:
    struct Text {
        std::string heading;
        Phrase text;
        NamedParts named;
    };
    const LengthStyle& style_;
    std::vector<Text> texts_;
    std::map<std::string, std::size_t> by_words_;
};

}  // namespace rodwright
