// What `list joints` and `list shapes` print, taken from the definitions' own text.
#pragma once

#include <string>

#include "grammar/tree.hpp"

namespace rodwright {

struct DefinitionText {
    std::string name;
    std::string summary;  // the definition's first sentence
    std::string details;  // members, parameters with their defaults and comments, what is cut, checks, steps
};

// `definition` is a `joint` or `shape` node.
DefinitionText definition_text(const Tree& tree, NodeId definition);

}  // namespace rodwright
