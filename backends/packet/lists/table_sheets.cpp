#include "backends/packet/lists/table_sheets.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double edge = 4;

double draw_title(Sheet& sheet, const std::string& title, const Rect& room, const Fonts& fonts) {
    constexpr double height = 5;
    const double baseline = room.top - height * reach_above;
    sheet.text(fitted({title, FontFace::bold, height, {room.left, baseline}, Align::left, false},
                      room.width(), fonts));
    return baseline - height * reach_below - 2;
}

double draw_preface(Sheet& sheet, const std::vector<std::string>& preface, const Rect& room,
                    const Fonts& fonts) {
    constexpr double height = 2.5;
    double top = room.top;
    for (const std::string& paragraph : preface) {
        const std::vector<std::string> lines =
            wrap(paragraph, FontFace::regular, height, room.width(), fonts);
        set_lines(sheet, lines, {"", FontFace::regular, height, {room.left, 0}, Align::left, false}, top);
        top -= line_pitch * height * static_cast<double>(lines.size());
    }
    return preface.empty() ? top : top - 2;
}

bool done(const TableLayout& table, const TableCursor& cursor) {
    return cursor.row >= table.rows.size();
}

}  // namespace

std::vector<Draft> table_sheets(const Context& context, const TablePages& pages) {
    std::vector<Draft> drafts;
    std::size_t next = 0;
    TableCursor cursor;
    constexpr double least_room = 30;  // below that a further table starts on the next sheet
    while (next < pages.tables.size()) {
        drafts.push_back(new_draft(context, pages.group, pages.title));
        Sheet& sheet = drafts.back().sheet;
        Rect room = drawing_room(sheet.frame).grown(-edge);
        room.top = draw_title(sheet, drafts.size() == 1 ? pages.title : pages.title + ", continued", room,
                              context.fonts);
        if (drafts.size() == 1) room.top = draw_preface(sheet, pages.preface, room, context.fonts);
        while (next < pages.tables.size() && room.height() > least_room) {
            const TableLayout table = lay_out_table(pages.tables[next], room.width(), context.fonts);
            cursor = draw_table(sheet, table, cursor, room);
            room.top = cursor.bottom - 2 * edge;
            if (!done(table, cursor)) break;
            ++next;
            cursor = {};
        }
    }
    return drafts;
}

}  // namespace rodwright::packet
