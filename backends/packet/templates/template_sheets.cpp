// Templates on sheets: small ones share a sheet, large ones are cut over as many as it takes.
#include <algorithm>

#include "backends/drawing/tiling.hpp"
#include "backends/packet/templates/templates.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double edge = 4;
constexpr double gap = 6;                      // between two drawings on one sheet
constexpr double foot = scale_bars_below + 2;  // the strip under the templates
constexpr double side = scale_bars_left + 1;   // and left of them
constexpr double label = 8;                    // over a tile: its name and the map
constexpr double too_long = 4000;              // mm

Rect room_of(const Sheet& sheet) {
    Rect room = drawing_room(sheet.frame).grown(-edge);
    room.bottom += foot;
    room.left += side;
    return room;
}

bool fits(const Sheet& drawing, const Rect& room) {
    return drawing.frame.width() <= room.width() && drawing.frame.height() <= room.height();
}

// One tile with its name and the map of all over it, and the template's caption over the first.
Sheet labelled_tile(const Template& each, const Tiling& tiling, std::size_t column, std::size_t row,
                    const Fonts& fonts) {
    const Rect tile = tiling.tile(column, row);
    Template paper{each.name, each.file, {}, each.caption};
    Sheet& sheet = paper.drawing;
    sheet.title = each.name + ", tile " + tile_name(column, row);
    draw_tile(sheet, each.drawing, tiling, column, row, {0, 0}, fonts);
    const double top = tile.height();
    const Rect over{0, top + 2, tile.width(), top + label - 1};
    draw_tile_map(sheet, tiling, column, row, each.name, over, fonts);
    sheet.frame = {0, 0, tile.width(), top + label};
    return column == 0 && row == 0 ? whole(paper) : paper.drawing;
}

// In place of a template that would take a roll of sheets: where it is.
Sheet pointer_to(const Context& context, const Template& each) {
    const std::string note = "Too long for these sheets: print templates/" + each.file + ".svg at full size.";
    Sheet pointer = captioned(context, "", each.name, {note}, {}, each.file).caption;
    pointer.title = each.name;
    return pointer;
}

// What goes on paper of one template: all of it, or its tiles.
std::vector<Sheet> pieces_of(const Context& context, const Template& each, const Rect& room) {
    const Fonts& fonts = context.fonts;
    if (std::max(each.drawing.frame.width(), each.drawing.frame.height()) > too_long)
        return {pointer_to(context, each)};
    if (fits(whole(each), room)) return {whole(each)};
    const double over = label + each.caption.frame.height() + gap;
    const Tiling tiling(each.drawing, room.width(), std::max(room.height() - over, 3 * tile_overlap), fonts);
    std::vector<Sheet> tiles;
    for (std::size_t row = 0; row < tiling.rows(); ++row) {
        for (std::size_t column = 0; column < tiling.columns(); ++column)
            tiles.push_back(labelled_tile(each, tiling, column, row, fonts));
    }
    return tiles;
}

// One sheet's drawings, in rows from the top left, y downwards from 0.
struct Board {
    Sheet drawing;
    std::vector<std::string> names;
    double row_top = 0;  // of the row that is being filled
    double row_height = 0;
    double row_width = 0;

    // Puts it into the row or a new one under it; false if there is no room.
    bool put(const Sheet& each, const Rect& room) {
        const Rect& box = each.frame;
        const bool beside = row_width + box.width() <= room.width();
        const double top = beside ? row_top : row_top + row_height + gap;
        if (top + box.height() > room.height()) return false;
        if (!beside) *this = {std::move(drawing), std::move(names), top, 0, 0};
        const Point by{row_width - box.left, -top - box.top};
        for (const Item& item : each.items) drawing.items.push_back(moved(item, by));
        names.push_back(each.title);
        row_width += box.width() + gap;
        row_height = std::max(row_height, box.height());
        return true;
    }
};

// Each on the first sheet that has room for it, tiles in their order.
std::vector<Board> boards_of(const std::vector<std::vector<Sheet>>& templates, const Rect& room) {
    std::vector<Board> boards;
    for (const std::vector<Sheet>& pieces : templates) {
        std::size_t at = 0;
        for (const Sheet& piece : pieces) {
            while (at < boards.size() && !boards[at].put(piece, room)) ++at;
            if (at == boards.size()) boards.emplace_back().put(piece, room);
        }
    }
    return boards;
}

std::string title_of(const Board& board) {
    const std::size_t others = board.names.size() - 1;
    if (others == 0) return "Template, " + board.names[0];
    return "Templates, " + board.names[0] + " and " + std::to_string(others) + " more";
}

Draft sheet_of(const Context& context, const Board& board) {
    Draft draft = new_draft(context, "templates", title_of(board));
    const Rect room = room_of(draft.sheet);
    for (const Item& item : board.drawing.items)
        draft.sheet.items.push_back(moved(item, {room.left, room.top}));
    draw_scale_bars(draft.sheet, {room.left - side, room.bottom - foot}, context.piece.style.unit);
    draft.block.scale = "1:1";
    return draft;
}

}  // namespace

std::vector<Draft> template_sheets(const Context& context, const std::vector<Template>& all) {
    const Rect room = room_of(framed_sheet(context.format, ""));
    std::vector<std::vector<Sheet>> pieces;
    for (const Template& each : all) pieces.push_back(pieces_of(context, each, room));
    std::vector<Draft> drafts;
    for (const Board& board : boards_of(pieces, room)) drafts.push_back(sheet_of(context, board));
    return drafts;
}

}  // namespace rodwright::packet
