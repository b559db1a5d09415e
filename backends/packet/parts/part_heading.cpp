#include "backends/packet/parts/part_heading.hpp"

#include <algorithm>

#include "backends/drawing/balloon.hpp"
#include "backends/drawing/text_layout.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

std::string count_text(std::size_t count) {
    return "make " + std::to_string(count);
}

std::string sizes_text(const Kind& kind, const FigureStyle& style) {
    const auto size = [&](Axis axis) { return figure(kind.overall(axis), style); };
    std::string text =
        "length " + size(Axis::wide) + "  width " + size(Axis::deep) + "  thickness " + size(Axis::tall);
    const Extent& ends = kind.extend[0];
    if (ends.low != 0 || ends.high != 0) {
        text += "  (between shoulders " + figure(kind.size[Axis::wide], style) + ")";
    }
    return text;
}

// What is done to it, each once: labels as the design writes them.
std::string shaping_text(const Kind& kind) {
    std::vector<std::string> labels;
    for (const ShapeUse& use : kind.shapes) {
        if (std::find(labels.begin(), labels.end(), use.label) == labels.end()) labels.push_back(use.label);
    }
    std::string text;
    for (const std::string& label : labels) text += (text.empty() ? "" : "; ") + plain_words(label);
    return text;
}

std::string places_text(const Piece& piece, const Kind& kind) {
    std::string text;
    for (const PartId part : kind.parts) text += (text.empty() ? "" : ", ") + plain_words(piece[part].name);
    return text;
}

std::vector<std::string> paragraphs(const Context& context, KindId id) {
    const Piece& piece = context.piece;
    const Kind& kind = piece[id];
    std::vector<std::string> lines = {count_text(kind.parts.size()) + " of " + wood_words(piece, kind.wood) +
                                      ": " + sizes_text(kind, context.figures())};
    constexpr std::size_t few = 6;  // more names than that help nobody at the bench
    if (kind.parts.size() <= few) lines.push_back("For: " + places_text(piece, kind));
    for (const KindId mirror : mirrors_of(piece, id)) {
        const Kind& other = piece[mirror];
        lines.push_back(other.letter + " is the opposite hand of " + kind.letter + ": " +
                        count_text(other.parts.size()) + ", the mirror image of what is drawn here (" +
                        places_text(piece, other) + ")");
    }
    for (std::string& note : shop_notes(piece, kind, piece.style))
        lines.push_back(capitalised(std::move(note)));
    if (kind.glued) lines.push_back("Glued up from " + glued_up_words(*kind.glued, piece.style));
    const std::string shaping = shaping_text(kind);
    if (!shaping.empty()) lines.push_back("Shaping: " + shaping);
    return lines;
}

}  // namespace

double draw_part_heading(Sheet& sheet, const Context& context, KindId id, const Rect& room) {
    const Kind& kind = context.piece[id];
    draw_balloon(sheet, {room.left + balloon_radius, room.top - balloon_radius}, kind.letter, context.fonts);
    const double left = room.left + 2 * balloon_radius + 3;
    constexpr double name_height = 5;
    sheet.text(fitted({capitalised(plain_words(kind.name)),
                       FontFace::bold,
                       name_height,
                       {left, room.top - balloon_radius - name_height / 2},
                       Align::left,
                       false},
                      room.right - left, context.fonts));
    constexpr double height = 2.5;
    double top = room.top - 2 * balloon_radius - 2;
    for (const std::string& paragraph : paragraphs(context, id)) {
        const std::vector<std::string> lines =
            wrap(paragraph, FontFace::regular, height, room.right - left, context.fonts);
        set_lines(sheet, lines, {"", FontFace::regular, height, {left, 0}, Align::left, false}, top);
        top -= line_pitch * height * static_cast<double>(lines.size());
    }
    return top;
}

}  // namespace rodwright::packet
