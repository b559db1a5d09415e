// A start for the search where there are many equal parts: layouts that the linear programme of column
// generation asks for, many times each.
#pragma once

#include "compiler/stock/cutting/guillotine/search.hpp"

namespace rodwright::cutting::guillotine {

// Whether there are enough equal parts for layouts to be repeated.
bool has_many_equal_parts(const Kinds& kinds);

// Puts layouts into the search, which has none yet, for most of the parts, in `work` units of the search or a
// little more. The patterns are found by the search itself, on one piece of stock, with the duals as the
// parts' worth. Returns the work done.
Amount start_from_patterns(const Kinds& kinds, Search& search, Amount work);

}  // namespace rodwright::cutting::guillotine
