// Text to syntax tree.
#pragma once

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/diagnostics/source.hpp"
#include "grammar/tree.hpp"

namespace rodwright {

// Reads the whole of `file`. Always returns a tree; what could not be read is in `diagnostics` and stands in
// the tree as `broken` nodes. The tree refers to the text in `sources`, which must outlive it.
Tree parse(const SourceManager& sources, FileId file, Diagnostics& diagnostics);

}  // namespace rodwright
