// Text from outside made safe to show in a terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rodwright {

struct Printable {
    std::string text;
    std::vector<std::size_t> column_of;  // by byte of the original, and one for its end; from zero
};

// Tabs become blanks up to the next multiple of four columns; bytes that are not UTF-8, control characters
// and marks that reverse the reading direction become U+FFFD. One character is one column.
Printable make_printable(std::string_view text);

}  // namespace rodwright
