#include "backends/packet/parts/end_view.hpp"

#include <algorithm>

namespace rodwright::packet {

using namespace drawing;

EndView::EndView(const PartView& part, const AxisView& end)
    : part_(part),
      end_(end),
      lines_(part.seen(end)),
      outline_(part.outline(end)),
      notes_(easing_notes(part, end)) {
    const Fonts& fonts = part.context.fonts;
    const std::vector<Station> across = stations_on_sheet(part, end.right, 0, 1);
    const std::vector<Station> upright = stations_on_sheet(part, end.up, 0, 1);
    left_ = std::max(first_dimension + joint_line(end.up) + 8, easing_strip(notes_, false, fonts));
    over_ = first_dimension + joint_line(end.right) + 8;
    right_ = std::max(upright.empty() ? 4 : first_dimension + running_depth(upright, fonts),
                      easing_strip(notes_, true, fonts));
    under_ = caption_strip + std::max(across.empty() ? 0 : first_dimension + running_depth(across, fonts),
                                      easing_depth(notes_));
}

bool EndView::says_more() const {
    return !is_plain(lines_);
}

DimensionedAxes EndView::draw(Sheet& sheet, const Rect& room) const {
    const Scale scale = choose_scale(part_.context.piece.style.unit, outline_.width(), outline_.height(),
                                     room.width() - left_ - right_, room.height() - over_ - under_, {2, 1});
    const Point corner{room.left + left_, room.top - over_ - outline_.height() * scale.factor()};
    const ViewPlace place{scale.factor(), {outline_.left, outline_.bottom}, corner};
    draw_view(sheet, lines_, place, part_.label());
    draw_sizes(sheet, place);
    DimensionedAxes dimensioned = draw_stations(sheet, place, room);
    const std::string caption = "Right end, scale " + scale.text();
    sheet.text(fitted({caption, FontFace::regular, 2.5, {room.left, room.bottom + 1.5}, Align::left, false},
                      room.width(), part_.context.fonts));
    draw_easing_notes(sheet, notes_, place.on_sheet(part_.body(end_)), place.factor, room,
                      part_.context.fonts);
    const DrawnView drawn{end_, place.factor, [place](Point point) { return place.on_sheet(point); }};
    draw_feature_leaders(sheet, part_, drawn, dimensioned, room);
    return dimensioned;
}

void EndView::draw_sizes(Sheet& sheet, const ViewPlace& place) const {
    const Rect box = place.on_sheet(outline_);
    const Rect body = place.on_sheet(part_.body(end_));
    const Lengths sideways = lengths_of(part_, end_.right, body.left, place.factor);
    const Lengths up = lengths_of(part_, end_.up, body.bottom, place.factor);
    draw_lengths(sheet, part_, Run::across, end_.right, sideways, box.top, box.top + first_dimension,
                 next_dimension);
    draw_lengths(sheet, part_, Run::upright, end_.up, up, box.left, box.left - first_dimension,
                 -next_dimension);
}

DimensionedAxes EndView::draw_stations(Sheet& sheet, const ViewPlace& place, const Rect& room) const {
    const Rect box = place.on_sheet(outline_);
    const Rect body = place.on_sheet(part_.body(end_));
    const RunningDimension sideways{Run::across,
                                    box.bottom,
                                    box.bottom - first_dimension,
                                    body.left,
                                    stations_on_sheet(part_, end_.right, body.left, place.factor),
                                    room.left + 3,
                                    room.right - 3};
    const RunningDimension up{Run::upright,
                              box.right,
                              box.right + first_dimension,
                              body.bottom,
                              stations_on_sheet(part_, end_.up, body.bottom, place.factor),
                              room.bottom + under_,
                              room.top - 3};
    DimensionedAxes shown;
    for (const auto& [running, axis] : {std::pair(sideways, end_.right.axis), std::pair(up, end_.up.axis)}) {
        if (!fits(running, part_.context.fonts)) continue;
        draw_running(sheet, running, part_.context.fonts);
        shown.insert(axis);
    }
    return shown;
}

}  // namespace rodwright::packet
