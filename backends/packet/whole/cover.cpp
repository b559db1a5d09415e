// The cover: the piece in a pictorial view, what it is and takes, and which sheet shows what.
#include "backends/drawing/axis_view.hpp"
#include "backends/packet/pictorials.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/whole/cover_text.hpp"
#include "backends/packet/whole/whole_views.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

std::vector<KindId> kinds_of_placed(const Context& context) {
    std::vector<KindId> kinds;
    for (const PlacedSolid& placed : context.placed) kinds.push_back(context.piece.parts[placed.tag].kind);
    return kinds;
}

constexpr double name_height = 7;
constexpr double name_depth = name_height * (reach_above + reach_below) + 3;

void draw_name(Sheet& sheet, const Context& context, const Rect& room) {
    const double baseline = room.top - name_height * reach_above;
    sheet.text(
        fitted({context.piece.name, FontFace::bold, name_height, {room.left, baseline}, Align::left, false},
               room.width(), context.fonts));
}

// A wide sheet has the picture beside the text, a tall one above it.
struct CoverPlaces {
    Rect picture;
    std::vector<Rect> columns;
};

CoverPlaces cover_places(const Rect& room) {
    constexpr double gap = 8;
    if (room.width() > room.height()) {
        const double split = room.left + 0.52 * room.width();
        const double middle = (split + gap + room.right) / 2;
        return {{room.left, room.bottom, split, room.top},
                {{split + gap, room.bottom, middle - gap / 2, room.top},
                 {middle + gap / 2, room.bottom, room.right, room.top}}};
    }
    const double split = room.bottom + 0.46 * room.height();
    const double middle = room.centre().x;
    return {{room.left, split + gap, room.right, room.top},
            {{room.left, room.bottom, middle - gap / 2, split},
             {middle + gap / 2, room.bottom, room.right, split}}};
}

// Below the name.
CoverPlaces places_on(const Sheet& sheet) {
    Rect room = drawing_room(sheet.frame).grown(-sheet_edge);
    room.top -= name_depth;
    return cover_places(room);
}

}  // namespace

Draft cover_picture(const Context& context) {
    Draft draft = new_draft(context, "cover", "Cover");
    draw_name(draft.sheet, context, drawing_room(draft.sheet.frame).grown(-sheet_edge));
    lay_out_pictorial(context, context.placed, kinds_of_placed(context), isometric_view(),
                      places_on(draft.sheet).picture)
        .draw(draft.sheet);
    return draft;
}

void write_cover(Draft& cover, const Context& context, std::span<const Draft> others) {
    std::vector<FlowBlock> blocks = cover_facts(context);
    blocks.push_back(page_list(others));
    draw_flow(cover.sheet, blocks, places_on(cover.sheet).columns, 2.5, context.fonts);
}

}  // namespace rodwright::packet
