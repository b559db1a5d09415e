// Reading and printing rod text in tests.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "grammar/parse.hpp"
#include "grammar/print.hpp"

namespace rodwright {

// A text with its tree; keeps alive what the tree refers to.
struct Parsed {
    explicit Parsed(std::string text);

    // One line a diagnostic: "line:column-length code message | help: ... | line:column label".
    std::string report() const;
    std::size_t count(NodeKind kind) const;
    // The comments' texts, in reading order.
    std::vector<std::string> comments() const;

    std::unique_ptr<SourceManager> sources = std::make_unique<SourceManager>();
    Diagnostics diagnostics;
    FileId file;
    Tree tree;
};

// Kinds, operators and the texts of leaves, without places: equal for texts that mean the same.
std::string meaning(const Tree& tree);

struct Sample {
    std::string name;
    std::string text;
};

// Every .rod file of stdlib/ and examples/, and samples with every construct of the language.
std::vector<Sample> samples();

}  // namespace rodwright
