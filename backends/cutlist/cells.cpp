#include "backends/cutlist/cells.hpp"

#include <fmt/format.h>

#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>

#include "backends/words.hpp"

namespace rodwright {

std::vector<Column> cut_columns(const CutList& list) {
    std::vector<Column> columns = {{"item"},        {"part"},        {"count", true},    {"length", true},
                                   {"width", true}, {"thick", true}, {"shoulders", true}};
    if (list.has_rough) columns.push_back({"rough"});
    if (list.has_boards) columns.push_back({"board"});
    columns.push_back({"notes"});
    return columns;
}

std::string rough_words(const RoughCut& rough, const LengthStyle& style) {
    std::string words = rough.panel ? "panel " : "";
    if (rough.parts > 1) words += fmt::format("{} in ", rough.parts);
    words += fmt::format("{} x {}", format_length(rough.size[Axis::wide], style),
                         format_length(rough.size[Axis::deep], style));
    const bool quarters = style.unit == LengthUnit::inch && !rough.thickness_class.empty();
    return words + " x " + (quarters ? rough.thickness_class : format_length(rough.size[Axis::tall], style));
}

Cells cut_cells(const CutRow& row, const CutList& list, const LengthStyle& style) {
    Cells cells = {row.letter, plain_words(row.name), std::to_string(row.count)};
    for (const Axis axis : all_axes) cells.push_back(format_length(row.size[axis], style));
    cells.push_back(row.shoulder_length ? format_length(*row.shoulder_length, style) : "");
    if (list.has_rough) cells.push_back(row.rough ? rough_words(*row.rough, style) : "");
    if (list.has_boards) cells.push_back(joined(row.boards));
    cells.push_back(joined(row.notes, "; "));
    return cells;
}

const std::vector<Column>& hardware_columns() {
    static const std::vector<Column> columns = {{"count", true}, {"what"}, {"notes"}};
    return columns;
}

Cells hardware_cells(const HardwareRow& row, const LengthStyle& style) {
    return {format_quantity(Quantity::number(row.count), style), plain_words(row.name), row.note};
}

std::vector<std::string> cut_list_preface(const CutList& list) {
    std::vector<std::string> lines = {
        fmt::format("{} of {}.", counted(list.parts, "part"), counted(list.kinds, "kind")),
        "Sizes are final. Length runs along the grain and includes what joints need beyond the shoulders;",
        "`shoulders` is the length that shows, where that is less."};
    if (list.has_rough) {
        lines.push_back(
            "`rough` is what is sawn for a part, or for several that are milled in one length or matched, "
            "before milling.");
    }
    if (list.rounded) {
        LengthStyle step = list.style;
        const Rational factor = list.style.unit == LengthUnit::inch ? inches(1) : Rational(1);
        const Rational smallest = list.style.step * factor;
        lines.push_back(
            fmt::format("~ marks a size that is shown to the nearest {}.", format_length(smallest, step)));
    }
    return lines;
}

double nearest_double(const Rational& value) {
    const double inner = value.get_d();
    const double outer =
        std::nextafter(inner, std::copysign(std::numeric_limits<double>::infinity(), sgn(value)));
    const Rational below = abs(value - Rational(inner));
    const Rational above = abs(value - Rational(outer));
    if (below == above) return std::bit_cast<std::uint64_t>(inner) % 2 == 0 ? inner : outer;
    return below < above ? inner : outer;
}

}  // namespace rodwright
