// Prints how much of what is drawn on each sheet of a design's packet: sheet_items FILE.rod
//
// A change of a drawing shows in the golden tests as numbers that a reader can place, not as other bytes.
// Strokes of grain are left out: they are ornament, and many.
#include <fmt/format.h>

#include <cstdio>
#include <map>

#include "backends/drawing/line_style.hpp"
#include "backends/packet/make_context.hpp"
#include "backends/packet/sheets.hpp"
#include "compiler/compile.hpp"
#include "compiler/workplan/plan_work.hpp"

namespace {

using namespace rodwright;
using namespace rodwright::drawing;

std::string name_of(const Item& item) {
    if (const auto* stroke = std::get_if<Stroke>(&item)) return std::string(drawing::name_of(stroke->role));
    if (const auto* arc = std::get_if<Arc>(&item)) return std::string(drawing::name_of(arc->role));
    if (std::holds_alternative<Text>(item)) return "text";
    if (std::holds_alternative<Link>(item)) return "link";
    if (std::holds_alternative<Fill>(item) || std::holds_alternative<Disc>(item)) return "fill";
    return "";
}

std::string line_of(const Sheet& sheet) {
    std::map<std::string, int> counts;
    for (const Item& item : sheet.items) {
        const std::string name = name_of(item);
        if (!name.empty() && name != "grain") ++counts[name];
    }
    std::string line = sheet.title + ":";
    for (const auto& [name, count] : counts) line += fmt::format(" {} {}", name, count);
    return line + "\n";
}

// The sheets, or nothing with the reason in `diagnostics`.
std::vector<Sheet> sheets_of(const Compilation& compilation, Diagnostics& diagnostics) {
    const std::optional<Fonts> fonts = Fonts::load(diagnostics);
    SolidStore solids(*compilation.piece, diagnostics);
    const SolidKernel* kernel = solids.kernel();
    if (!fonts || kernel == nullptr) return {};
    const Piece& piece = *compilation.piece;
    const std::optional<WorkPlan> work =
        plan_work(piece, embedded_work_data(), assembly_facts(piece, solids), {}, diagnostics);
    BackendInput input{piece, *compilation.sources, solids, {}};
    input.work = work ? &*work : nullptr;
    const auto context = packet::make_context(input, {}, *fonts, *kernel, diagnostics);
    return context ? packet::packet_sheets(*context, packet::templates(*context)) : std::vector<Sheet>();
}

}  // namespace

int main(int count, char** words) {
    if (count != 2) {
        std::fputs("sheet_items FILE.rod\n", stderr);
        return 2;
    }
    Compilation compilation = compile(DiskWorld(), {words[1], {}, {}, {}});
    std::vector<Sheet> sheets;
    if (compilation.piece) sheets = sheets_of(compilation, compilation.diagnostics);
    for (const Sheet& sheet : sheets) std::fputs(line_of(sheet).c_str(), stdout);
    return sheets.empty() ? 1 : 0;
}
