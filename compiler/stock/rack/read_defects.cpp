#include <fmt/format.h>

#include "compiler/limits.hpp"
#include "compiler/stock/rack/rack_fields.hpp"
#include "compiler/stock/rack/read_entries.hpp"

namespace rodwright {

static DefectFace face_of(FieldReader& fields) {
    const YamlNode* node = fields.optional_scalar("face");
    if (node == nullptr || node->text == "both") return DefectFace::both;
    if (node->text == "upper") return DefectFace::upper;
    if (node->text == "lower") return DefectFace::lower;
    fields.fault(
        *node, fmt::format("`{}` is no face of a board", shortened(node->text)),
        "write `upper`, `lower` or `both`, with the first end on the left and the first edge in front");
    return DefectFace::both;
}

static std::optional<WoodDefect> read_defect(const YamlNode& node, const Rational& length,
                                             const Rational& width, Diagnostics& diagnostics) {
    FieldReader fields(node, {"from_end", "from_edge", "length", "width", "face", "note"}, diagnostics);
    fields.require({"from_end", "from_edge", "length", "width"},
                   "as in `{from_end: 20 in, from_edge: 2 in, length: 1-1/2 in, width: 1 in, note: knot}`");
    WoodDefect defect{size_or_none(fields, "from_end", place_bounds),
                      size_or_none(fields, "from_edge", place_bounds),
                      size_or_none(fields, "length", place_bounds),
                      size_or_none(fields, "width", place_bounds),
                      words_of(fields, "note"),
                      face_of(fields)};
    if (fields.ok() && (defect.length == 0 || defect.width == 0)) {
        fields.fault(node, "this defect has no size", "write its `length` along the board and its `width`");
    }
    if (defect.from_end + defect.length > length || defect.from_edge + defect.width > width) {
        fields.fault(node, "this defect reaches past the board's length or width",
                     "`from_end` and `from_edge` say where it begins, measured from the first end and the "
                     "first edge");
    }
    if (!fields.ok()) return std::nullopt;
    return defect;
}

std::vector<WoodDefect> defects_of(FieldReader& fields, const Rational& length, const Rational& width) {
    const YamlNode* list = fields.optional_list("defects");
    if (list == nullptr) return {};
    if (list->children.size() > limits::board_defects) {
        fields.fault(diagnose(Code::too_large, list->children[limits::board_defects].span,
                              fmt::format("more than {} defects on one board", limits::board_defects))
                         .hint("leave such a board out of the rack, or mark a spoiled stretch as one"));
        return {};
    }
    std::vector<WoodDefect> defects;
    for (const YamlNode& node : list->children) {
        if (std::optional<WoodDefect> defect = read_defect(node, length, width, fields.diagnostics())) {
            defects.push_back(std::move(*defect));
        } else {
            fields.spoil();
        }
    }
    return defects;
}

}  // namespace rodwright
