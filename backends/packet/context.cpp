#include "backends/packet/context.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

std::string units_text(const LengthStyle& style) {
    const bool inch = style.unit == LengthUnit::inch;
    const std::string step = to_text(style.step);
    return inch ? "inches, to the nearest " + step : "millimetres, to the nearest " + step;
}

std::string date_of(const BackendInput& input) {
    for (const auto& [name, value] : input.environment) {
        if (name == "SOURCE_DATE_EPOCH") return date_text(value);
    }
    return "";
}

}  // namespace

Draft new_draft(const Context& context, std::string group, std::string subject) {
    Draft draft;
    draft.sheet = framed_sheet(context.format, subject);
    draft.block.title = context.piece.name;
    draft.block.subject = std::move(subject);
    draft.block.units = units_text(context.piece.style);
    draft.block.format = context.format.name;
    draft.block.date = date_of(context.input);
    draft.group = std::move(group);
    return draft;
}

std::string figure(const Rational& millimetres, const LengthStyle& style) {
    LengthStyle on_drawing = style;
    on_drawing.unit_sign = style.unit == LengthUnit::inch;
    return format_length(millimetres, on_drawing);
}

std::vector<KindId> mirrors_of(const Piece& piece, KindId kind) {
    std::vector<KindId> mirrors;
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        if (piece.kinds[i].mirror_of == kind) mirrors.push_back(static_cast<KindId>(i));
    }
    return mirrors;
}

Colour kind_colour(const Piece& piece, const Kind& kind) {
    const Wood* wood = piece.find_wood(kind.wood);
    return colour_of(wood == nullptr ? "" : wood->colour);
}

}  // namespace rodwright::packet
