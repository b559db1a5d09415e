// From a layout of the search to the tree of cuts that is handed out.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"
#include "compiler/stock/cutting/guillotine/layout.hpp"

namespace rodwright::cutting::guillotine {

CutTree cut_tree(const Kinds& kinds, const Layout& layout);

}  // namespace rodwright::cutting::guillotine
