// What each SVG shows, with the words for who does not see it.
#pragma once

#include <string>
#include <vector>

#include "backends/packet/context.hpp"

namespace rodwright::svg {

struct SvgView {
    std::string file;         // "part-A1", without folder and ending
    std::string description;  // one or two sentences
    drawing::Sheet sheet;     // its title says what it shows; its frame is what is drawn
};

// The whole piece, and then every kind of part but mirror images. In each, every part is a group that says
// which line of the design it comes from.
std::vector<SvgView> views_of(const packet::Context& context);

// Parts that lock each other, each moved out along the way it would go in.
SvgView locked_view(const packet::Context& context, const std::vector<PartId>& parts);

}  // namespace rodwright::svg
