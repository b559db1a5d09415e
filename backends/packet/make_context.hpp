// From what a backend is given and told to what its sheets are made from.
#pragma once

#include <functional>
#include <optional>

#include "backends/packet/context.hpp"

namespace rodwright::packet {

// --projection and --units: of every backend that draws the piece.
std::vector<OptionSpec> drawing_options();
// --sheet, --number, --revision: of those that draw it on sheets with a title block.
std::vector<OptionSpec> sheet_options();

// Empty if there is no solid to draw, or no order of the steps; the reason is reported. `input`, `fonts` and
// `kernel` are kept by address.
std::optional<Context> make_context(const BackendInput& input, const OptionValues& options,
                                    const drawing::Fonts& fonts, const SolidKernel& kernel,
                                    Diagnostics& diagnostics);

// Makes fonts and context and hands them on. Not called where one of them is missing; why is reported.
void with_context(const BackendInput& input, const OptionValues& options, Diagnostics& diagnostics,
                  const std::function<void(const Context&)>& draw);

}  // namespace rodwright::packet
