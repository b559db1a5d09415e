#include <algorithm>

#include "compiler/stock/rack/rack_fields.hpp"
#include "compiler/stock/rack/read_entries.hpp"

namespace rodwright {

namespace {

constexpr std::string_view example =
    "a board in one line: `{name: A1, wood: white_ash, thickness: 4/4, width: 7-1/2 in, length: 8 ft}`";

// The fields in the order in which README explains them.
RackBoard board_in(FieldReader& fields, const WoodTable& woods) {
    RackBoard board;
    board.name = name_of(fields);
    board.species = wood_of(fields, woods, false, "sheets");
    board.cut = cut_of(fields);
    board.surfaced = fields.flag("surfaced");
    board.thickness = thickness_of(fields);
    board.length = size_of(fields, "length", length_bounds);
    const SizePair widths = sizes_of(fields, "width", width_bounds);
    board.width = widths.first;
    board.far_width = widths.second;
    board.count = count_of(fields);
    board.moisture = percent_of(fields, "moisture");
    const SizePair checks = at_both_ends(fields, "checks", place_bounds);
    board.checks = checks.first;
    board.far_checks = checks.second;
    board.sapwood = size_or_none(fields, "sapwood", place_bounds);
    board.warp = {size_or_none(fields, "bow", place_bounds), size_or_none(fields, "cup", place_bounds),
                  size_or_none(fields, "twist", place_bounds)};
    board.price = price_of(fields);
    board.from = words_of(fields, "from");
    board.note = words_of(fields, "note");
    return board;
}

// What only shows when fields are seen together.
void check_board(FieldReader& fields, const RackBoard& board) {
    const Rational narrowest = std::min(board.width, board.far_width);
    const auto check = [&](bool holds, std::string_view key, const char* message, const char* hint) {
        if (!holds) fields.fault(*fields.entry(key), message, hint);
    };
    const YamlNode& thickness = *fields.entry("thickness");
    check(!board.surfaced || !is_by_quarters(thickness.text), "thickness",
          "quarters are rough, a surfaced board is thinner", "write what it measures, such as `13/16 in`");
    check(board.checks + board.far_checks < board.length, "checks",
          "the end checks leave nothing of this board",
          "`checks` are the lengths spoiled at the first end and at the other: `2 in, 1 in`");
    check(board.sapwood <= narrowest, "sapwood", "the sapwood is wider than the board",
          "`sapwood` is the width of the strip along the far edge");
    check(board.warp.bow < board.length, "bow", "this board would be bent more than it is long",
          "`bow` is the gap under a straightedge laid along the face: `1/8 in`");
    check(board.warp.cup < narrowest, "cup", "this board would be cupped more than it is wide",
          "`cup` is the gap under a straightedge laid across the face: `1/16 in`");
    check(board.warp.twist < board.length, "twist", "this board would be twisted more than it is long",
          "`twist` is how far the fourth corner stands up: `1/8 in`");
}

}  // namespace

std::optional<RackBoard> read_board(const YamlNode& node, bool offcut, const WoodTable& woods,
                                    Diagnostics& diagnostics) {
    FieldReader fields(
        node,
        {"name", "wood", "cut", "surfaced", "thickness", "length", "width", "count", "moisture", "checks",
         "sapwood", "bow", "cup", "twist", "defects", "price", "from", "note"},
        diagnostics);
    if (node.kind != YamlKind::map) return std::nullopt;
    fields.require({"name", "wood", "thickness", "width", "length"}, std::string(example));
    RackBoard board = board_in(fields, woods);
    if (board.length > 0 && board.width > 0 && board.far_width > 0) {
        board.defects = defects_of(fields, board.length, std::max(board.width, board.far_width));
        if (board.thickness > 0) check_board(fields, board);
    }
    if (!offcut && fields.entry("from") != nullptr) {
        fields.fault(*fields.entry("from"), "a board that was sawn from another is an offcut",
                     "write this entry under `offcuts`");
    }
    if (!fields.ok()) return std::nullopt;
    board.offcut = offcut;
    board.where = node.span;
    return board;
}

}  // namespace rodwright
