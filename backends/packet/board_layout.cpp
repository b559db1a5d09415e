#include "backends/packet/board_layout.hpp"

#include <algorithm>
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
        outline();
        for (const PlanArea& defect : board_.defects) crossed(box_of(defect), LineRole::hidden);
        for (const PlannedCut& cut : board_.cuts) cut_line(cut);
        for (const PlanRegion& region : board_.regions) fill(region);
        numbers();
        if (!outside_.empty()) draw_callouts(sheet_, outside_, letters(), fonts_);
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
    std::vector<Rect> taken_;
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
            if (box.contains(extent) && !meets_defect(extent)) return text;
        }
        return std::nullopt;
    }

    bool meets_defect(const Rect& box) const {
        return std::ranges::any_of(board_.defects,
                                   [&](const PlanArea& defect) { return box_of(defect).overlaps(box); });
    }

    void fill(const PlanRegion& region) {
        const Rect box = box_of(region.area);
        if (region.kind == PlanRegion::Kind::waste && box.width() > 0 && box.height() > 0) {
            sheet_.line(LineRole::dimension, {box.left, box.bottom}, {box.right, box.top});
        }
        if (region.kind != PlanRegion::Kind::piece && region.kind != PlanRegion::Kind::offcut) return;
        const std::optional<Text> label = label_in(region);
        if (label) {
            taken_.push_back(text_box(*label, fonts_).grown(clear));
            sheet_.text(*label);
        } else if (region.kind == PlanRegion::Kind::piece) {
            outside_.push_back({label_of(region), box.centre()});
            taken_.push_back(Rect{box.centre().x, box.centre().y, box.centre().x, letters().at}.grown(1));
        }
    }

    // Each cut's number stands beside its line, within a piece that no other line crosses; where there is no
    // such place it is left out, and the order of the cuts below tells.
    void numbers() {
        for (std::size_t i = 0; i < board_.cuts.size(); ++i) {
            const std::optional<Text> number = number_at(board_.cuts[i], std::to_string(i + 1));
            if (!number) continue;
            taken_.push_back(text_box(*number, fonts_).grown(clear));
            sheet_.text(*number);
        }
    }

    std::optional<Text> number_at(const PlannedCut& cut, const std::string& number) const {
        constexpr int places = 16;
        const Rect whole = box_of(board_.regions[cut.of].area);
        const Point line = on_sheet(cut.at, cut.at);
        const double kerf = (cut.crosscut ? board_.crosscut_kerf : board_.rip_kerf).get_d() * picture_.factor;
        const double beside = clear + number_height / 2;
        for (const double side : {-beside - number_height / 3, kerf + beside + number_height / 3}) {
            for (int place = 0; place < places; ++place) {
                const double share = (place + 0.5) / places;
                Point middle = cut.crosscut ? Point{line.x + side, whole.top - share * whole.height()}
                                            : Point{whole.right - share * whole.width(), line.y + side};
                middle.y -= number_height / 2;
                const Text text{number, FontFace::regular, number_height, middle, Align::middle, false};
                if (is_free(text_box(text, fonts_).grown(clear / 2))) return text;
            }
        }
        return std::nullopt;
    }

    bool is_free(const Rect& box) const {
        if (meets_defect(box)) return false;
        if (std::ranges::any_of(taken_, [&](const Rect& other) { return other.overlaps(box); })) return false;
        return std::ranges::any_of(board_.regions, [&](const PlanRegion& region) {
            const bool leaf =
                region.kind == PlanRegion::Kind::piece || region.kind == PlanRegion::Kind::offcut;
            return leaf && box_of(region.area).contains(box);
        });
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
