#include <fmt/format.h>
#include <algorithm>

#include "compiler/stock/rack/rack_fields.hpp"
#include "compiler/stock/rack/read_entries.hpp"

namespace rodwright {

FaceGrain grain_of(FieldReader& fields) {
    const YamlNode* node = fields.optional_scalar("grain");
    if (node == nullptr || node->text == "length") return FaceGrain::along_length;
    if (node->text == "width") return FaceGrain::along_width;
    if (node->text != "none") {
        fields.fault(*node, fmt::format("`{}` is no direction of the face grain", shortened(node->text)),
                     "write `length` or `width`, whichever the grain runs along, or `none`");
    }
    return FaceGrain::none;
}

std::optional<RackSheet> read_sheet(const YamlNode& node, const WoodTable& woods, Diagnostics& diagnostics) {
    FieldReader fields(node,
                       {"name", "wood", "thickness", "length", "width", "grain", "count", "trim", "defects",
                        "price", "from", "note"},
                       diagnostics);
    if (node.kind != YamlKind::map) return std::nullopt;
    fields.require({"name", "wood", "thickness", "length", "width"},
                   "a sheet in one line: `{name: P1, wood: birch_plywood, thickness: 18mm, length: 2440mm, "
                   "width: 1220mm}`");
    RackSheet sheet;
    sheet.name = name_of(fields);
    sheet.species = wood_of(fields, woods, true, "boards");
    sheet.thickness = thickness_of(fields);
    sheet.length = size_of(fields, "length", length_bounds);
    sheet.width = size_of(fields, "width", length_bounds);
    sheet.grain = grain_of(fields);
    sheet.count = count_of(fields);
    sheet.trim = size_or_none(fields, "trim", place_bounds);
    sheet.price = price_of(fields);
    sheet.from = words_of(fields, "from");
    sheet.offcut = fields.entry("from") != nullptr;
    sheet.note = words_of(fields, "note");
    if (sheet.length > 0 && sheet.width > 0) {
        sheet.defects = defects_of(fields, sheet.length, sheet.width);
        if (2 * sheet.trim >= std::min(sheet.length, sheet.width)) {
            fields.fault(*fields.entry("trim"), "the trim leaves nothing of this sheet",
                         "`trim` is taken off each edge as it comes from the factory: `10mm`");
        }
    }
    if (!fields.ok()) return std::nullopt;
    sheet.where = node.span;
    return sheet;
}

}  // namespace rodwright
