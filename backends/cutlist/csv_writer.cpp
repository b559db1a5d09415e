#include <fmt/format.h>

#include "backends/csv.hpp"
#include "backends/cutlist/cells.hpp"
#include "backends/cutlist/writers.hpp"
#include "backends/words.hpp"

namespace rodwright {
namespace {

std::string millimetres(const Rational& value) {
    return fmt::format("{:.3f}", nearest_double(value));
}

Cells row_cells(const CutGroup& group, const CutRow& row, const LengthStyle& style) {
    Cells cells = {group.wood, group.words, row.letter, row.name, std::to_string(row.count)};
    for (const Axis axis : all_axes) cells.push_back(format_length(row.size[axis], style));
    cells.push_back(row.shoulder_length ? format_length(*row.shoulder_length, style) : "");
    for (const Axis axis : all_axes) cells.push_back(millimetres(row.size[axis]));
    cells.push_back(row.shoulder_length ? millimetres(*row.shoulder_length) : "");
    for (const Axis axis : all_axes) cells.push_back(row.rough ? millimetres(row.rough->size[axis]) : "");
    cells.push_back(row.rough ? std::to_string(row.rough->parts) : "");
    cells.push_back(joined(row.boards, "; "));
    cells.push_back(joined(row.notes, "; "));
    return cells;
}

}  // namespace

std::string cut_list_csv(const CutList& list) {
    std::string text = csv_record({"wood", "wood_words", "item", "part", "count", "length", "width",
                                   "thickness", "shoulder_length", "length_mm", "width_mm", "thickness_mm",
                                   "shoulder_length_mm", "rough_length_mm", "rough_width_mm",
                                   "rough_thickness_mm", "parts_in_rough", "boards", "notes"});
    for (const CutGroup& group : list.groups) {
        for (const CutRow& row : group.rows) text += csv_record(row_cells(group, row, list.style));
    }
    return text;
}

std::string hardware_csv(const CutList& list) {
    std::string text = csv_record({"count", "what", "notes"});
    for (const HardwareRow& row : list.hardware) text += csv_record({to_text(row.count), row.name, row.note});
    return text;
}

}  // namespace rodwright
