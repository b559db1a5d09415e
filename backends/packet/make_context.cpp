#include "backends/packet/make_context.hpp"

#include <algorithm>

#include "compiler/at_once.hpp"
#include "compiler/check/findings.hpp"

namespace rodwright::packet {

using drawing::ProjectionMethod;

namespace {

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
    std::vector<std::vector<Triangle>> triangles(piece.kinds.size());
    at_once(triangles.size(), [&](std::size_t i) {
        const SolidRef solid = solids.solid(static_cast<KindId>(i));
        if (solid) triangles[i] = kernel.triangles(*solid, mesh_tolerance);
    });
    return triangles;
}

// "note: ..." where it is no warning; what the design accepts with its reason.
std::string finding_text(const Diagnostic& diagnostic) {
    if (!diagnostic.accepted.empty())
        return "accepted, because " + diagnostic.accepted + ": " + diagnostic.message;
    return (diagnostic.severity == Severity::note ? "advice: " : "") + diagnostic.message;
}

std::vector<std::string> texts_of(const Diagnostics& diagnostics) {
    std::vector<std::string> texts;
    for (const Diagnostic& diagnostic : diagnostics.sorted()) {
        std::string text = finding_text(diagnostic);
        if (std::find(texts.begin(), texts.end(), text) == texts.end()) texts.push_back(std::move(text));
    }
    return texts;
}

std::string chosen(const OptionValues& options, const std::string& name) {
    const auto found = options.find(name);
    return found == options.end() ? "" : found->second;
}

// The piece with its lengths shown in the unit that is asked for.
Piece shown_in(Piece piece, const std::string& units) {
    const bool inch = units == "inch";
    const LengthUnit wanted = inch ? LengthUnit::inch : LengthUnit::millimetre;
    if ((inch || units == "mm") && piece.style.unit != wanted) piece.style = usual_style(wanted);
    return piece;
}

}  // namespace

std::vector<OptionSpec> drawing_options() {
    return {{"projection",
             OptionType::word,
             "auto",
             {"auto", "first", "third"},
             "how views stand to one another; auto: third angle for inches, first angle for millimetres"},
            {"units",
             OptionType::word,
             "auto",
             {"auto", "mm", "inch", "both"},
             "lengths on drawings; auto: as the design has them; both: the other unit in brackets"}};
}

std::vector<OptionSpec> sheet_options() {
    return {{"sheet",
             OptionType::word,
             "auto",
             {"auto", "a4", "a3", "letter", "tabloid"},
             "paper size; auto: letter for a piece in inches, a4 for one in millimetres"},
            {"number", OptionType::word, "", {}, "the drawings' number in the title block"},
            {"revision",
             OptionType::word,
             "",
             {},
             "the revision in the title block; git: the short name of the last commit of the design's "
             "repository"}};
}

std::optional<Context> make_context(const BackendInput& input, const OptionValues& options,
                                    const drawing::Fonts& fonts, const SolidKernel& kernel,
                                    Diagnostics& diagnostics) {
    std::vector<PlacedSolid> placed = input.solids.placed();
    if (placed.empty()) {
        diagnostics.add(diagnose(Code::cannot_draw, {}, "no part of the piece has a shape to draw"));
        return std::nullopt;
    }
    const std::string units = chosen(options, "units");
    Piece piece = shown_in(input.piece, units);
    Context context{input,
                    std::move(piece),
                    fonts,
                    kernel,
                    {},
                    {},
                    std::move(placed),
                    triangles_of(input.piece, input.solids, kernel),
                    texts_of(input.findings != nullptr ? input.findings->diagnostics : diagnostics)};
    context.format = format_of(context.piece, chosen(options, "sheet"));
    context.projection = projection_of(context.piece, chosen(options, "projection"));
    if (units == "both") context.beside = usual_style(other_unit(context.piece.style.unit));
    context.number = chosen(options, "number");
    context.revision = chosen(options, "revision");
    return context;
}

void with_context(const BackendInput& input, const OptionValues& options, Diagnostics& diagnostics,
                  const std::function<void(const Context&)>& draw) {
    const std::optional<drawing::Fonts> fonts = drawing::Fonts::load(diagnostics);
    const SolidKernel* kernel = input.solids.kernel();
    if (!fonts || kernel == nullptr) return;
    const std::optional<Context> context = make_context(input, options, *fonts, *kernel, diagnostics);
    if (context) draw(*context);
}

}  // namespace rodwright::packet
