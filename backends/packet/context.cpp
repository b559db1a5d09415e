#include "backends/packet/context.hpp"

#include <filesystem>

#include "backends/epoch.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

std::string unit_text(const LengthStyle& style) {
    return style.unit == LengthUnit::inch ? "inches" : "millimetres";
}

std::string units_text(const FigureStyle& style) {
    const std::string step = to_text(style.own.step);
    if (!style.beside) return unit_text(style.own) + ", to the nearest " + step;
    return unit_text(style.own) + " to " + step + " [" + unit_text(*style.beside) + " to " +
           to_text(style.beside->step) + "]";
}

}  // namespace

Draft new_draft(const Context& context, std::string group, std::string subject) {
    Draft draft;
    draft.sheet = framed_sheet(context.format, subject);
    draft.block.title = context.piece.name;
    draft.block.subject = std::move(subject);
    draft.block.units = units_text(context.figures());
    draft.block.format = context.format.name;
    draft.block.date = date_text(source_date(context.input.environment));
    draft.block.number = context.number;
    draft.block.revision = context.revision;
    draft.sheet.section = capitalised(group);
    draft.group = std::move(group);
    return draft;
}

std::string sheet_anchor(std::size_t number) {
    return "sheet " + std::to_string(number);
}

std::vector<KindId> mirrors_of(const Piece& piece, KindId kind) {
    std::vector<KindId> mirrors;
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        if (piece.kinds[i].mirror_of == kind) mirrors.push_back(static_cast<KindId>(i));
    }
    return mirrors;
}

std::string source_of(const Context& context, const Span& where) {
    const SourceManager& sources = context.input.sources;
    if (static_cast<std::size_t>(where.file) >= sources.size()) return "";
    const std::string file = std::filesystem::path(sources.name(where.file)).filename().string();
    return file + ":" + std::to_string(sources.position(where.file, where.begin).line);
}

Colour kind_colour(const Piece& piece, const Kind& kind) {
    const Wood* wood = piece.find_wood(kind.wood);
    return colour_of(wood == nullptr ? "" : wood->colour);
}

}  // namespace rodwright::packet
