#include "backends/packet/boards/board_layout.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "backends/drawing/balloon.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double label_height = 2.5;
constexpr double number_height = 1.8;
constexpr double clear = 0.6;  // round a text

class BoardDrawing {
  public:
    BoardDrawing(Sheet& sheet, const BoardPicture& picture, const Fonts& fonts)
        : sheet_(sheet), picture_(picture), board_(picture.board), fonts_(fonts) {}

    void run() {
        first_item_ = sheet_.items.size();
        outline();
        for (const PlanDefect& defect : board_.defects) crossed(box_of(defect.area), LineRole::hidden);
        for (const PlannedCut& cut : board_.cuts) cut_line(cut);
        for (const PlanRegion& region : board_.regions) cross_out(region);
        for (const PlanRegion& region : board_.regions) name_piece(region);
        for (const PlanRegion* region : unnamed_)
            outside_.push_back({label_of(*region), target_in(box_of(region->area))});
        if (!outside_.empty()) draw_callouts(sheet_, outside_, letters(), fonts_);
        for (const PlanRegion& region : board_.regions) name_offcut(region);
        numbers();
    }

    std::size_t letters_outside() const {
        std::size_t count = 0;
        for (const PlanRegion& region : board_.regions) {
            if (region.kind == PlanRegion::Kind::piece && !label_in(region)) ++count;
        }
        return count;
    }

  private:
    Sheet& sheet_;
    const BoardPicture& picture_;
    const PlannedBoard& board_;
    const Fonts& fonts_;
    std::size_t first_item_ = 0;
    std::vector<const PlanRegion*> unnamed_;  // too small for their letter
    std::vector<Callout> outside_;

    Point on_sheet(const Rational& from_end, const Rational& from_edge) const {
        return picture_.corner + Point{from_end.get_d(), from_edge.get_d()} * picture_.factor;
    }

    Rect box_of(const PlanArea& area) const {
        const Point low = on_sheet(area.from_end, area.from_edge);
        const Point high = on_sheet(area.from_end + area.length, area.from_edge + area.width);
        return {low.x, low.y, high.x, high.y};
    }

    BalloonLine letters() const {
        const double over = on_sheet(0, std::max(board_.width, board_.far_width)).y;
        return {Run::across, over + letters_over_board - balloon_radius, picture_.low, picture_.high};
    }

    void outline() {
        sheet_.polyline(LineRole::visible,
                        {on_sheet(0, 0), on_sheet(board_.length, 0),
                         on_sheet(board_.length, board_.far_width), on_sheet(0, board_.width)},
                        true);
        if (board_.sapwood > 0) {
            sheet_.line(LineRole::hidden, on_sheet(0, board_.width - board_.sapwood),
                        on_sheet(board_.length, board_.far_width - board_.sapwood));
        }
    }

    void crossed(const Rect& box, LineRole role) {
        sheet_.rectangle(role, box);
        sheet_.line(role, {box.left, box.bottom}, {box.right, box.top});
        sheet_.line(role, {box.left, box.top}, {box.right, box.bottom});
    }

    // In the middle of the kerf, across what is cut.
    void cut_line(const PlannedCut& cut) {
        const PlanArea& whole = board_.regions[cut.of].area;
        const Rational middle = cut.at + (cut.crosscut ? board_.crosscut_kerf : board_.rip_kerf) / 2;
        if (cut.crosscut) {
            sheet_.line(LineRole::dimension, on_sheet(middle, whole.from_edge),
                        on_sheet(middle, whole.from_edge + whole.width));
        } else {
            sheet_.line(LineRole::dimension, on_sheet(whole.from_end, middle),
                        on_sheet(whole.from_end + whole.length, middle));
        }
    }

    std::string label_of(const PlanRegion& region) const {
        if (region.kind == PlanRegion::Kind::piece) return board_.pieces[*region.piece].label;
        return "offcut " + format_length(region.area.length, picture_.style) + " x " +
               format_length(region.area.width, picture_.style);
    }

    // Along the board if there is room, else across it.
    std::optional<Text> label_in(const PlanRegion& region) const {
        const Rect box = box_of(region.area);
        for (const bool upward : {false, true}) {
            Text text{label_of(region), FontFace::bold, label_height, box.centre(), Align::middle, upward};
            (upward ? text.at.x : text.at.y) += (upward ? 1 : -1) * label_height / 2;
            const Rect extent = text_box(text, fonts_).grown(clear);
            if (box.contains(extent) && is_clear(extent)) return text;
        }
        return std::nullopt;
    }

    bool meets_defect(const Rect& box) const {
        return std::ranges::any_of(
            board_.defects, [&](const PlanDefect& defect) { return box_of(defect.area).overlaps(box); });
    }

    // No defect, no text and no line that has been drawn of this board.
    bool is_clear(const Rect& box) const {
        if (meets_defect(box)) return false;
        for (std::size_t i = first_item_; i < sheet_.items.size(); ++i) {
            if (const auto* text = std::get_if<Text>(&sheet_.items[i])) {
                if (text_box(*text, fonts_).overlaps(box)) return false;
            } else if (const auto* stroke = std::get_if<Stroke>(&sheet_.items[i])) {
                if (crosses(*stroke, box)) return false;
            }
        }
        return true;
    }

    static bool crosses(const Stroke& stroke, const Rect& box) {
        const std::size_t count = stroke.points.size();
        for (std::size_t i = 0; i + 1 < count + (stroke.closed ? 1 : 0); ++i) {
            if (segment_meets(stroke.points[i], stroke.points[(i + 1) % count], box)) return true;
        }
        return false;
    }

    // Clips the segment to the box from side to side (J. Liang, B. Barsky, ACM Transactions on Graphics 3
    // (1984)).
    static bool segment_meets(Point from, Point to, const Rect& box) {
        const Point way = to - from;
        double enter = 0;
        double leave = 1;
        const auto clip = [&](double step, double room) {
            if (step == 0) return room >= 0;
            const double at = room / step;
            if (step < 0) enter = std::max(enter, at);
            if (step > 0) leave = std::min(leave, at);
            return enter <= leave;
        };
        return clip(-way.x, from.x - box.left) && clip(way.x, box.right - from.x) &&
               clip(-way.y, from.y - box.bottom) && clip(way.y, box.top - from.y);
    }

    void cross_out(const PlanRegion& region) {
        const Rect box = box_of(region.area);
        if (region.kind == PlanRegion::Kind::waste && box.width() > 0 && box.height() > 0)
            sheet_.line(LineRole::dimension, {box.left, box.bottom}, {box.right, box.top});
    }

    void name_piece(const PlanRegion& region) {
        if (region.kind != PlanRegion::Kind::piece) return;
        if (const std::optional<Text> label = label_in(region)) return sheet_.text(*label);
        unnamed_.push_back(&region);
    }

    // Where a leader from above meets no letter on its way.
    Point target_in(const Rect& box) const {
        const double top = on_sheet(0, std::max(board_.width, board_.far_width)).y;
        for (const double share : {0.5, 0.35, 0.65, 0.2, 0.8}) {
            const Point target{box.left + share * box.width(), box.centre().y};
            if (!meets_text(target, {target.x, top})) return target;
        }
        return box.centre();
    }

    void name_offcut(const PlanRegion& region) {
        if (region.kind != PlanRegion::Kind::offcut) return;
        if (const std::optional<Text> label = label_in(region)) sheet_.text(*label);
    }

    // Each cut's number stands below the board under a cut that ends there, else beside its line where there
    // is room, else near by with a leader to it.
    void numbers() {
        for (std::size_t i = 0; i < board_.cuts.size(); ++i) {
            const std::string number = std::to_string(i + 1);
            if (const std::optional<Text> text = number_at(board_.cuts[i], number)) {
                sheet_.text(*text);
            } else {
                number_with_leader(board_.cuts[i], number);
            }
        }
    }

    Point middle_of(const PlannedCut& cut) const {
        const Rect whole = box_of(board_.regions[cut.of].area);
        const Point line = on_sheet(cut.at, cut.at);
        return cut.crosscut ? Point{line.x, whole.centre().y} : Point{whole.centre().x, line.y};
    }

    // As near to the cut as there is room: below the board, or on it where that is too far.
    void number_with_leader(const PlannedCut& cut, const std::string& number) {
        const Point target = middle_of(cut);
        for (const Point middle : places_near(target)) {
            const Text text = number_text(number, middle);
            const Point start = leader_start(text_box(text, fonts_).grown(clear / 2), target);
            if (!is_clear(text_box(text, fonts_).grown(clear / 2)) || meets_text(start, target)) continue;
            sheet_.line(LineRole::dimension, start, target);
            return sheet_.text(text);
        }
    }

    // In the middle of the side that faces the target.
    static Point leader_start(const Rect& box, Point target) {
        const Point middle = box.centre();
        const Point way = target - middle;
        if (std::abs(way.x) * box.height() > std::abs(way.y) * box.width())
            return {way.x > 0 ? box.right : box.left, middle.y};
        return {middle.x, way.y > 0 ? box.top : box.bottom};
    }

    std::vector<Point> places_near(Point target) const {
        constexpr int steps = 60;
        constexpr double longest = 25;  // mm, of a leader to below the board
        constexpr double step_of = number_height / 4;
        std::vector<Point> places;
        const double below = picture_.corner.y - clear - number_height;
        for (int step = 1; step <= steps; ++step) {
            const double x = target.x + (step % 2 == 0 ? 1 : -1) * step * step_of;
            if (target.y - below <= longest) places.push_back({x, below});
        }
        for (int step = 4; step <= 2 * steps; ++step) {
            for (const Point way :
                 {Point{0, 1}, {1, 0}, {0, -1}, {-1, 0}, {1, 1}, {1, -1}, {-1, -1}, {-1, 1}})
                places.push_back(target + way * (step * step_of));
        }
        const double top = on_sheet(0, std::min(board_.width, board_.far_width)).y;
        std::erase_if(places, [&](Point place) {
            return place.x < picture_.low || place.x > picture_.high || place.y < below || place.y > top;
        });
        return places;
    }

    bool meets_text(Point from, Point to) const {
        for (std::size_t i = first_item_; i < sheet_.items.size(); ++i) {
            const auto* text = std::get_if<Text>(&sheet_.items[i]);
            if (text != nullptr && segment_meets(from, to, text_box(*text, fonts_))) return true;
        }
        return false;
    }

    Text number_text(const std::string& number, Point middle) const {
        return {number, FontFace::regular, number_height, middle - Point{0, number_height / 2}, Align::middle,
                false};
    }

    std::optional<Text> number_at(const PlannedCut& cut, const std::string& number) const {
        constexpr int places = 16;
        const Rect whole = box_of(board_.regions[cut.of].area);
        const Point line = on_sheet(cut.at, cut.at);
        const double kerf = (cut.crosscut ? board_.crosscut_kerf : board_.rip_kerf).get_d() * picture_.factor;
        std::vector<Point> middles;
        if (cut.crosscut && whole.bottom <= picture_.corner.y)
            middles.push_back({line.x + kerf / 2, whole.bottom - clear - number_height});
        for (const double side : {-number_height, kerf + number_height}) {
            for (int place = 0; place < places; ++place) {
                const double share = (place + 0.5) / places;
                middles.push_back(cut.crosscut ? Point{line.x + side, whole.top - share * whole.height()}
                                               : Point{whole.right - share * whole.width(), line.y + side});
            }
        }
        for (const Point middle : middles) {
            const Text text = number_text(number, middle);
            if (is_clear(text_box(text, fonts_).grown(clear / 2))) return text;
        }
        return std::nullopt;
    }
};

}  // namespace

bool needs_letters_over(const BoardPicture& picture, const Fonts& fonts) {
    Sheet unused;
    return BoardDrawing(unused, picture, fonts).letters_outside() > 0;
}

void draw_board(Sheet& sheet, const BoardPicture& picture, const Fonts& fonts) {
    BoardDrawing(sheet, picture, fonts).run();
}

}  // namespace rodwright::packet
