// The letters of a STEP file.
#pragma once

#include <string>
#include <string_view>

namespace rodwright::occt {

// Open CASCADE breaks long strings over lines and writes UTF-8 as it is. Here strings are put together again,
// and what is not ASCII in them is written as ISO 10303-21 has it, `\X2\00E9\X0\`.
std::string clean_step_text(std::string_view text);

}  // namespace rodwright::occt
