// Which board gives which part: every board to scale with its cuts in their order.
#include <algorithm>

#include "backends/boards/board_words.hpp"
#include "backends/drawing/dimension.hpp"
#include "backends/drawing/scale.hpp"
#include "backends/drawing/table.hpp"
#include "backends/packet/boards/board_layout.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double edge = 6;
constexpr double text_height = 2.5;
constexpr double title_height = 3.5;
constexpr double gap = 4;

Table cuts_table(const PlannedBoard& board, const LengthStyle& style) {
    Table table;
    table.columns = {{"done", Align::left}, {"cut", Align::right},     {"how", Align::left},
                     {"of", Align::left},   {"setting", Align::right}, {"gives", Align::left}};
    std::size_t number = 0;
    for (const CutWords& words : cut_words(board, style)) {
        const std::string how = words.care.empty() ? words.what : words.what + ", " + words.care;
        table.rows.push_back(
            {{"\u2610", std::to_string(++number), how, words.of, words.setting, words.gives}, false});
    }
    return table;
}

// One sheet after another, filled from the top.
class BoardSheets {
  public:
    BoardSheets(const Context& context, const WoodPlan& plan)
        : context_(context), plan_(plan), scale_(common_scale()) {}

    std::vector<Draft> run() {
        if (!plan_.boards.empty()) {
            std::string preface(how_cuts_are_read);
            std::ranges::replace(preface, '\n', ' ');
            paragraph(preface + " In the pictures the grain runs from left to right.", FontFace::regular,
                      text_height);
        }
        for (const PlanGroup& group : plan_.groups) {
            // A heading does not stand alone at the foot of a sheet.
            if (!group.boards.empty())
                need(room_for(plan_.boards[group.boards.front()]) + 4 * line_pitch * title_height);
            const std::string before = wood_words_before(plan_, group);
            if (!before.empty()) paragraph(capitalised(before), FontFace::regular, text_height);
            paragraph(capitalised(group.title), FontFace::bold, title_height);
            paragraph(capitalised(group_words(plan_, group)), FontFace::regular, text_height);
            going_on_ = capitalised(group.title) + ", continued";
            for (const std::size_t board : group.boards) draw(plan_.boards[board]);
            going_on_.clear();
        }
        return std::move(drafts_);
    }

  private:
    const Context& context_;
    const WoodPlan& plan_;
    Scale scale_;
    std::vector<Draft> drafts_;
    Rect room_;
    std::string going_on_;  // over a sheet that begins within a group

    // Of all boards, so that they can be compared.
    Scale common_scale() const {
        double length = 1;
        double width = 1;
        for (const PlannedBoard& board : plan_.boards) {
            length = std::max(length, board.length.get_d());
            width = std::max({width, board.width.get_d(), board.far_width.get_d()});
        }
        const Rect room = drawing_room(framed_sheet(context_.format, "").frame).grown(-edge);
        return choose_scale(context_.piece.style.unit, length, width, room.width(), room.height() / 2);
    }

    void new_sheet() {
        drafts_.push_back(new_draft(context_, "boards", "Boards and their cuts"));
        drafts_.back().block.scale = scale_.text();
        room_ = drawing_room(drafts_.back().sheet.frame).grown(-edge);
        if (!going_on_.empty()) paragraph(going_on_, FontFace::bold, title_height);
    }

    void need(double height) {
        if (drafts_.empty() || room_.height() < height) new_sheet();
    }

    void paragraph(const std::string& text, FontFace face, double height) {
        need(4 * gap + block_height(2, height));
        const std::vector<std::string> lines = wrap(text, face, height, room_.width(), context_.fonts);
        set_lines(drafts_.back().sheet, lines, {"", face, height, {room_.left, 0}, Align::left, false},
                  room_.top);
        room_.top -= line_pitch * height * static_cast<double>(lines.size()) + gap / 2;
    }

    double height_of(const PlannedBoard& board) const {
        return std::max(board.width, board.far_width).get_d() * scale_.factor();
    }

    double room_over(const PlannedBoard& board) const {
        const BoardPicture picture{board, context_.piece.style, scale_.factor(), {}, 0, 0};
        return needs_letters_over(picture, context_.fonts) ? letters_over_board : gap / 2;
    }

    // The picture with the first few of its cuts.
    double room_for(const PlannedBoard& board) const {
        constexpr std::size_t few = 3;
        const TableLayout layout = layout_of(board);
        const auto rows = static_cast<double>(std::min(few, layout.rows.size()) + 1);
        return block_height(1, title_height) + room_over(board) + height_of(board) + 2 * gap +
               layout.row_height(1) * rows;
    }

    TableLayout layout_of(const PlannedBoard& board) const {
        return lay_out_table(cuts_table(board, context_.piece.style), width_of_table(), context_.fonts);
    }

    void draw(const PlannedBoard& board) {
        const LengthStyle& style = context_.piece.style;
        need(room_for(board));
        paragraph(board_title(board, style), FontFace::bold, text_height);
        const Point corner{room_.left, room_.top - room_over(board) - height_of(board)};
        draw_board(drafts_.back().sheet, {board, style, scale_.factor(), corner, room_.left, room_.right},
                   context_.fonts);
        room_.top = corner.y - gap;
        draw_cuts(layout_of(board));
    }

    double width_of_table() const {
        return drawing_room(framed_sheet(context_.format, "").frame).grown(-edge).width();
    }

    void draw_cuts(const TableLayout& layout) {
        TableCursor cursor;
        while (!layout.rows.empty()) {
            cursor = draw_table(drafts_.back().sheet, layout, cursor, room_);
            room_.top = cursor.bottom - 2 * gap;
            if (cursor.row >= layout.rows.size()) return;
            new_sheet();
        }
    }
};

}  // namespace

std::vector<Draft> board_sheets(const Context& context) {
    const WoodPlan* plan = context.input.wood;
    if (plan == nullptr || !plan->planned) return {};
    return BoardSheets(context, *plan).run();
}

}  // namespace rodwright::packet
