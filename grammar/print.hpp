// Syntax tree to text.
#pragma once

#include <string>

#include "grammar/tree.hpp"

namespace rodwright {

// The canonical form of a tree without broken nodes: four spaces a level, one blank between words, blank
// lines kept (at most one together), comments kept where they stood (on their own line, or after a
// statement). Printing what was read from printed text gives the same text.
std::string print(const Tree& tree);

// One line a node, indented by depth: kind, operator, byte range, and the text of leaves. For tests.
std::string dump(const Tree& tree);

}  // namespace rodwright
