#include "backends/svg/locked_picture.hpp"

#include "backends/drawing/svg/svg_writer.hpp"
#include "backends/packet/make_context.hpp"
#include "backends/svg/views.hpp"

namespace rodwright {

std::optional<std::string> locked_picture(const BackendInput& input, const std::vector<PartId>& parts,
                                          Diagnostics& diagnostics) {
    std::optional<std::string> picture;
    packet::with_context(input, {}, diagnostics, [&](const packet::Context& context) {
        const svg::SvgView view = svg::locked_view(context, parts);
        picture = drawing::write_svg(view.sheet, view.sheet.frame, view.description, context.fonts);
    });
    return picture;
}

}  // namespace rodwright
