// All parts from one piece of stock, with hardly any waste, or the proof that this cannot be.
//
// What guillotine cuts take apart, joins put together: two rectangles side by side make the smallest one that
// holds both. All that can be made so from the parts, without more waste than one piece of stock leaves, is
// made in the order of area (P. Y. Wang, Operations Research 31 (1983) 573-586). Where the parts nearly fill
// the piece, that is little; the search by ruin and recreate, which always leaves some gaps, finds nothing
// there.
#pragma once

#include "compiler/stock/cutting/guillotine/layout.hpp"

namespace rodwright::cutting::guillotine {

enum class Joined : std::uint8_t { made, impossible, open };

// `made`: the layout, opened for these kinds, holds all parts on that stock. `impossible` is proved; `open`
// where `work` units (of the search) did not suffice, or the rule or defects forbid what was made.
Joined join_all(const Kinds& kinds, int stock, Amount work, Layout& layout);

}  // namespace rodwright::cutting::guillotine
