// The map from a font's codes to characters that a PDF holds for search, copying and reading aloud.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

// A ToUnicode CMap (ISO 32000-1, 9.10.3) for fonts whose two-byte codes are the characters themselves, over
// every block of 256 characters that a text of the sheets has one of. A range must not leave such a block.
std::string to_unicode_map(const std::vector<Sheet>& sheets);

}  // namespace rodwright::drawing
