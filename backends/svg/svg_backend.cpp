#include "backends/svg/svg_backend.hpp"

#include "backends/drawing/svg/svg_writer.hpp"
#include "backends/packet/make_context.hpp"
#include "backends/svg/views.hpp"

namespace rodwright {

std::string SvgBackend::summary() const {
    return "each view as an SVG with words for who does not see it: pictorial, taken apart, arrangement, "
           "parts";
}

std::vector<OptionSpec> SvgBackend::options() const {
    return packet::drawing_options();
}

void SvgBackend::emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
                      Diagnostics& diagnostics) const {
    packet::with_context(input, options, diagnostics, [&](const packet::Context& context) {
        for (const svg::SvgView& view : svg::views_of(context)) {
            out.write("views/" + view.file + ".svg",
                      drawing::write_svg(view.sheet, view.sheet.frame, view.description, context.fonts));
        }
    });
}

std::unique_ptr<Backend> make_svg_backend() {
    return std::make_unique<SvgBackend>();
}

}  // namespace rodwright
