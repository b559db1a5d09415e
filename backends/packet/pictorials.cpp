#include "backends/packet/pictorials.hpp"

#include <algorithm>

#include "backends/drawing/seen_at_all.hpp"

namespace rodwright::packet {

using namespace drawing;

Pictorial lay_out_pictorial(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids,
                            std::vector<ShadedPart> parts, const View& from, const Rect& room) {
    Pictorial pictorial{from, project_visible(kernel, solids, parts, from), {}, {}};
    pictorial.parts = std::move(parts);
    const Rect& extent = pictorial.lines.bounds;
    constexpr double least = 1e-6;  // mm: what has no extent is drawn as nothing
    const double factor = std::min(room.width() / std::max(extent.width(), least),
                                   room.height() / std::max(extent.height(), least));
    pictorial.place = {factor, extent.centre(), room.centre()};
    return pictorial;
}

Pictorial lay_out_pictorial(const Context& context, const std::vector<PlacedSolid>& solids,
                            const std::vector<KindId>& kinds, const View& from, const Rect& room) {
    std::vector<ShadedPart> parts;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        const auto kind = static_cast<std::size_t>(kinds[i]);
        parts.push_back({&context.triangles[kind], solids[i].pose, solids[i].tag,
                         kind_colour(context.piece, context.piece.kinds[kind])});
    }
    return lay_out_pictorial(context.kernel, solids, std::move(parts), from, room);
}

}  // namespace rodwright::packet
