#include "backends/packet/packet.hpp"

#include "backends/drawing/pdf/pdf_writer.hpp"
#include "backends/drawing/svg/svg_writer.hpp"
#include "backends/epoch.hpp"
#include "backends/packet/make_context.hpp"
#include "backends/packet/sheets.hpp"

namespace rodwright {

static drawing::PdfInfo info_of(const packet::Context& context) {
    return {context.piece.name, "shop packet", true, source_date(context.input.environment)};
}

std::string PacketBackend::summary() const {
    return "the drawings to work from, as a PDF: cover, views, a sheet a part, cut list, order of work";
}

std::vector<OptionSpec> PacketBackend::options() const {
    std::vector<OptionSpec> options = packet::sheet_options();
    for (OptionSpec& option : packet::drawing_options()) options.push_back(std::move(option));
    return options;
}

void PacketBackend::emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
                         Diagnostics& diagnostics) const {
    const std::optional<drawing::Fonts> fonts = drawing::Fonts::load(diagnostics);
    const SolidKernel* kernel = input.solids.kernel();
    if (!fonts || kernel == nullptr) return;
    const std::optional<packet::Context> context =
        packet::make_context(input, options, *fonts, *kernel, diagnostics);
    if (!context) return;
    const std::vector<packet::Template> templates = packet::templates(*context);
    const std::vector<drawing::Sheet> sheets = packet::packet_sheets(*context, templates);
    std::optional<std::string> bytes = drawing::write_pdf(sheets, *fonts, info_of(*context), diagnostics);
    if (bytes) out.write("packet.pdf", std::move(*bytes));
    for (const packet::Template& each : templates) {
        const std::string description = each.name + ": a template at full size, " + input.piece.name;
        const drawing::Sheet uncut = packet::whole(each);
        out.write("templates/" + each.file + ".svg",
                  drawing::write_svg(uncut, uncut.frame, description, *fonts));
    }
}

std::unique_ptr<Backend> make_packet_backend() {
    return std::make_unique<PacketBackend>();
}

}  // namespace rodwright
