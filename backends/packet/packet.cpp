#include "backends/packet/packet.hpp"

#include <algorithm>

#include "backends/drawing/pdf/pdf_writer.hpp"
#include "backends/drawing/svg/svg_writer.hpp"
#include "backends/packet/sheets.hpp"

namespace rodwright {

using drawing::ProjectionMethod;

namespace {

constexpr double mesh_tolerance = 0.2;  // mm: finer than a pixel of any picture here

bool in_inches(const Piece& piece) {
    return piece.style.unit == LengthUnit::inch;
}

drawing::SheetFormat format_of(const Piece& piece, const std::string& word) {
    const drawing::SheetFormat* found = drawing::find_sheet_format(word);
    return found != nullptr ? *found : *drawing::find_sheet_format(in_inches(piece) ? "letter" : "a4");
}

// Third angle is the custom where inches are, first angle in most of the rest of the world.
ProjectionMethod projection_of(const Piece& piece, const std::string& word) {
    if (word == "third") return ProjectionMethod::third_angle;
    if (word == "first") return ProjectionMethod::first_angle;
    return in_inches(piece) ? ProjectionMethod::third_angle : ProjectionMethod::first_angle;
}

std::vector<std::vector<Triangle>> triangles_of(const Piece& piece, SolidStore& solids,
                                                const SolidKernel& kernel) {
    std::vector<std::vector<Triangle>> triangles;
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        const SolidRef solid = solids.solid(static_cast<KindId>(i));
        triangles.push_back(solid ? kernel.triangles(*solid, mesh_tolerance) : std::vector<Triangle>());
    }
    return triangles;
}

std::vector<std::string> warnings_in(const Diagnostics& diagnostics) {
    std::vector<std::string> warnings;
    for (const Diagnostic& diagnostic : diagnostics.sorted()) {
        const bool known = std::find(warnings.begin(), warnings.end(), diagnostic.message) != warnings.end();
        if (diagnostic.severity == Severity::warning && !known) warnings.push_back(diagnostic.message);
    }
    return warnings;
}

std::string chosen(const OptionValues& options, const std::string& name) {
    const auto found = options.find(name);
    return found == options.end() ? "" : found->second;
}

}  // namespace

std::string PacketBackend::summary() const {
    return "the drawings to work from, as a PDF: cover, views, a sheet a part, cut list, order of work";
}

std::vector<OptionSpec> PacketBackend::options() const {
    return {{"sheet",
             OptionType::word,
             "auto",
             {"auto", "a4", "a3", "letter", "tabloid"},
             "paper size; auto: letter for a piece in inches, a4 for one in millimetres"},
            {"projection",
             OptionType::word,
             "auto",
             {"auto", "first", "third"},
             "how views stand to one another; auto: third angle for inches, first angle for millimetres"}};
}

void PacketBackend::emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
                         Diagnostics& diagnostics) const {
    const std::optional<drawing::Fonts> fonts = drawing::Fonts::load(diagnostics);
    const SolidKernel* kernel = input.solids.kernel();
    if (!fonts || kernel == nullptr) return;
    const Piece& piece = input.piece;
    std::vector<PlacedSolid> placed = input.solids.placed();
    if (placed.empty()) {
        diagnostics.add(diagnose(Code::cannot_draw, {}, "no part of the piece has a shape to draw"));
        return;
    }
    std::optional<StepList> steps = make_steps(piece, diagnostics);
    if (!steps) return;
    const packet::Context context{input,
                                  piece,
                                  *fonts,
                                  *kernel,
                                  format_of(piece, chosen(options, "sheet")),
                                  projection_of(piece, chosen(options, "projection")),
                                  std::move(placed),
                                  triangles_of(piece, input.solids, *kernel),
                                  std::move(*steps),
                                  warnings_in(diagnostics)};
    const std::vector<packet::Template> templates = packet::templates(context);
    const std::vector<drawing::Sheet> sheets = packet::packet_sheets(context, templates);
    std::optional<std::string> bytes =
        drawing::write_pdf(sheets, *fonts, {piece.name, "shop packet", true}, diagnostics);
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
