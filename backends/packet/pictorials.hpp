// Pictorial views of parts, as large as the room for them allows.
#pragma once

#include <vector>

#include "backends/drawing/pictorial.hpp"
#include "backends/packet/context.hpp"

namespace rodwright::packet {

struct Pictorial {
    View from;
    drawing::Projected lines;
    std::vector<drawing::ShadedPart> parts;
    drawing::ViewPlace place;
    std::vector<drawing::Segment> broken = {};  // where parts are cut off, in the view's plane

    void draw(drawing::Sheet& sheet, const drawing::PartLabel& label = {}) const {
        draw_pictorial_view(sheet, lines, parts, from, place, label, broken);
    }
    drawing::Rect on_sheet() const { return place.on_sheet(lines.bounds); }
};

// Solids of the piece's kinds, `kinds[i]` that of `solids[i]`, in the middle of the room.
Pictorial lay_out_pictorial(const Context& context, const std::vector<PlacedSolid>& solids,
                            const std::vector<KindId>& kinds, const View& from, const drawing::Rect& room);

// The same for any solids. `parts` have their triangles, poses and colours.
Pictorial lay_out_pictorial(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids,
                            std::vector<drawing::ShadedPart> parts, const View& from,
                            const drawing::Rect& room);

}  // namespace rodwright::packet
