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
    return "the drawings to work from, as a PDF: cover, views and sections, a sheet a part and a joint, "
           "templates, "
           "cut list, order of work";
}

std::vector<OptionSpec> PacketBackend::options() const {
    std::vector<OptionSpec> options = packet::sheet_options();
    for (OptionSpec& option : packet::drawing_options()) options.push_back(std::move(option));
    return options;
}

static void write_packet(const packet::Context& context, OutputFolder& out, Diagnostics& diagnostics) {
    const std::vector<packet::Template> templates = packet::templates(context);
    const std::vector<drawing::Sheet> sheets = packet::packet_sheets(context, templates);
    std::optional<std::string> bytes =
        drawing::write_pdf(sheets, context.fonts, info_of(context), diagnostics);
    if (bytes) out.write("packet.pdf", std::move(*bytes));
    for (const packet::Template& each : templates) {
        const std::string description = each.name + ": a template at full size, " + context.piece.name;
        const drawing::Sheet uncut = packet::whole(each);
        out.write("templates/" + each.file + ".svg",
                  drawing::write_svg(uncut, uncut.frame, description, context.fonts));
    }
}

void PacketBackend::emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
                         Diagnostics& diagnostics) const {
    packet::with_context(input, options, diagnostics,
                         [&](const packet::Context& context) { write_packet(context, out, diagnostics); });
}

std::unique_ptr<Backend> make_packet_backend() {
    return std::make_unique<PacketBackend>();
}

}  // namespace rodwright
