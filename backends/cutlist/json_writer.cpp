#include <nlohmann/json.hpp>

#include "backends/cutlist/cells.hpp"
#include "backends/cutlist/writers.hpp"

namespace rodwright {
namespace {

using Json = nlohmann::ordered_json;

Json size(const Rational& millimetres, const LengthStyle& style) {
    return {{"exact", to_text(millimetres)},
            {"mm", nearest_double(millimetres)},
            {"shown", format_length(millimetres, style)}};
}

Json row(const CutRow& row, const LengthStyle& style) {
    Json object = {{"item", row.letter}, {"part", row.name}, {"count", row.count}};
    object["length"] = size(row.size[Axis::wide], style);
    object["width"] = size(row.size[Axis::deep], style);
    object["thickness"] = size(row.size[Axis::tall], style);
    if (row.shoulder_length) object["shoulder_length"] = size(*row.shoulder_length, style);
    if (row.rough) {
        object["rough"] = {{"length", size(row.rough->size[Axis::wide], style)},
                           {"width", size(row.rough->size[Axis::deep], style)},
                           {"thickness", size(row.rough->size[Axis::tall], style)},
                           {"class", row.rough->thickness_class},
                           {"parts", row.rough->parts},
                           {"panel", row.rough->panel}};
    }
    if (!row.boards.empty()) object["boards"] = row.boards;
    object["notes"] = row.notes;
    return object;
}

Json group(const CutGroup& group, const LengthStyle& style) {
    Json object = {{"wood", group.wood}, {"words", group.words}, {"sheet", group.sheet}};
    object["thickness"] = size(group.thickness, style);
    object["rows"] = Json::array();
    for (const CutRow& part : group.rows) object["rows"].push_back(row(part, style));
    return object;
}

}  // namespace

std::string cut_list_json(const CutList& list) {
    Json root = {{"format", 1}, {"piece", list.title}, {"parts", list.parts}, {"kinds", list.kinds}};
    root["groups"] = Json::array();
    for (const CutGroup& part : list.groups) root["groups"].push_back(group(part, list.style));
    root["hardware"] = Json::array();
    for (const HardwareRow& item : list.hardware) {
        root["hardware"].push_back(
            {{"what", item.name}, {"count", to_text(item.count)}, {"notes", item.note}});
    }
    return root.dump(2) + "\n";
}

}  // namespace rodwright
