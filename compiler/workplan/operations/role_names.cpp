#include "compiler/workplan/operations/role_names.hpp"

#include <algorithm>

#include "compiler/words.hpp"

namespace rodwright {

void add_names(NamedParts& named, const NamedParts& more) {
    for (const auto& [role, parts] : more) {
        std::vector<std::string>& known = named[role];
        for (const std::string& part : parts) {
            if (std::ranges::find(known, part) == known.end()) known.push_back(part);
        }
    }
}

NamedParts named_in(const Phrase& phrase) {
    NamedParts named;
    for (const auto& [role, part] : parts_named(phrase)) named[role].push_back(part);
    return named;
}

Phrase with_names(const Phrase& phrase, const NamedParts& named) {
    Phrase full;
    for (const Phrase::Word& word : phrase.words) {
        const auto* part = std::get_if<Phrase::NamedPart>(&word);
        if (part == nullptr) {
            full.words.push_back(word);
        } else {
            full.words.emplace_back(one_of(named.at(part->role)));
        }
    }
    return full;
}

void RoleNames::add(const std::string& heading, const Phrase& text) {
    const auto [place, is_new] = by_words_.try_emplace(heading + read_by_role(text, style_), texts_.size());
    if (is_new) texts_.push_back({heading, text, {}});
    add_names(texts_[place->second].named, named_in(text));
}

std::vector<Phrase> RoleNames::take() {
    std::vector<Phrase> lines;
    for (const Text& text : texts_) {
        Phrase line = with_names(text.text, text.named);
        line.words.insert(line.words.begin(), text.heading);
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace rodwright
