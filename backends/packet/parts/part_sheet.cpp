// The sheet of one kind of part: front view with what is measured along it, an end view larger with what is
// measured across it, a pictorial, the table of features, how many and of what.
#include <algorithm>

#include "backends/drawing/balloon.hpp"
#include "backends/drawing/dimension.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/drawing/scale.hpp"
#include "backends/drawing/table.hpp"
#include "backends/packet/parts/feature_table.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/packet/parts/part_heading.hpp"
#include "backends/packet/parts/part_views.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double edge = 4;

std::string subject_of(const Context& context, KindId kind) {
    const Kind& own = context.piece[kind];
    std::string subject = "Part " + own.letter;
    for (const KindId mirror : mirrors_of(context.piece, kind))
        subject += " and " + context.piece[mirror].letter;
    return subject + ", " + plain_words(own.name);
}

Draft part_draft(const Context& context, KindId kind, const std::string& more) {
    Draft draft = new_draft(context, "parts", subject_of(context, kind) + more);
    draft.letter = context.piece[kind].letter;
    draft.sheet.anchors.push_back(draft.letter);
    for (const KindId mirror : mirrors_of(context.piece, kind))
        draft.sheet.anchors.push_back(context.piece[mirror].letter);
    return draft;
}

std::vector<Draft> continued(const Context& context, KindId kind, const TableLayout& table,
                             TableCursor cursor) {
    std::vector<Draft> drafts;
    while (cursor.row < table.rows.size()) {
        Draft draft = part_draft(context, kind, ", sizes");
        const Rect room = drawing_room(draft.sheet.frame).grown(-edge);
        cursor = draw_table(draft.sheet, table, cursor, room);
        drafts.push_back(std::move(draft));
    }
    return drafts;
}

// The table, or as many of its rows as leave the views their share, at the foot of the room; `room` keeps
// what is over it.
TableCursor draw_table_below(Sheet& sheet, const TableLayout& table, Rect& room) {
    if (table.rows.empty()) return {};
    constexpr double most = 0.42;  // of the room
    const double height = std::min(height_from(table, {}), most * room.height());
    const TableCursor cursor =
        draw_table(sheet, table, {}, {room.left, room.bottom, room.right, room.bottom + height});
    room.bottom += height + edge;
    return cursor;
}

}  // namespace

std::vector<Draft> part_sheets(const Context& context, KindId kind) {
    std::vector<Draft> drafts = {part_draft(context, kind, "")};
    Draft& draft = drafts.front();
    Rect room = drawing_room(draft.sheet.frame).grown(-edge);
    room.top = draw_part_heading(draft.sheet, context, kind, room) - edge;
    const AxisView view = lying(context.piece[kind]);
    const TableLayout table = lay_out_table(feature_table(context.piece[kind], view, context.figures()),
                                            room.width(), context.fonts);
    const TableCursor cursor = draw_table_below(draft.sheet, table, room);
    draft.block.projection = context.projection;
    draft.block.scale = draw_part_views(draft.sheet, context, kind, view, room);
    for (Draft& more : continued(context, kind, table, cursor)) drafts.push_back(std::move(more));
    return drafts;
}

}  // namespace rodwright::packet
