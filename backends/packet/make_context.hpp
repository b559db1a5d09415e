// From what a backend is given and told to what its sheets are made from.
#pragma once

#include <optional>

#include "backends/packet/context.hpp"

namespace rodwright::packet {

// --sheet, --projection, --units: of every backend that draws the piece.
std::vector<OptionSpec> drawing_options();
// --number and --revision: of those with a title block.
std::vector<OptionSpec> title_options();

// Empty if there is no solid to draw, or no order of the steps; the reason is reported. `input` and `fonts`
// are kept by address.
std::optional<Context> make_context(const BackendInput& input, const OptionValues& options,
                                    const drawing::Fonts& fonts, Diagnostics& diagnostics);

}  // namespace rodwright::packet
