// What is glued to what, a picture each: parts stand back along the ways they are brought in.
#include <algorithm>
#include <span>

#include "backends/drawing/text_flow.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/whole/whole_views.hpp"
#include "backends/work_words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

// Each motion taken back, the last first: by part.
std::vector<Point3> taken_back(const Piece& piece, const GlueUp& glue_up) {
    std::vector<Point3> moves(piece.parts.size());
    double longest = 0;
    for (const PartId part : glue_up.parts) {
        for (const Axis axis : all_axes) longest = std::max(longest, piece[part].body.size(axis).get_d());
    }
    constexpr double gap = 0.16;  // of the longest part
    for (const BringIn& motion : glue_up.motions) {
        const auto axis = static_cast<std::size_t>(motion.way.axis);
        for (const PartId part : motion.goes)
            moves[static_cast<std::size_t>(part)][axis] -= (motion.way.positive ? 1 : -1) * gap * longest;
    }
    return moves;
}

FlowBlock words_of(const Context& context, std::size_t operation) {
    const Operation& step = context.input.work->operations[operation];
    FlowBlock block;
    block.heading = operation_title(step) + " (step " + std::to_string(operation + 1) + ")";
    for (const Phrase& line : step.text) block.paragraphs.push_back(read_out(line, context.piece.style));
    if (const std::string caution = read_out(step.caution, context.piece.style); !caution.empty())
        block.paragraphs.push_back("Caution: " + caution);
    return block;
}

constexpr std::size_t on_a_sheet = 2;

struct Places {
    Rect picture;
    Rect words;
};

// The upper half of a sheet (0) or the lower.
Places places_of(const Sheet& sheet, std::size_t place) {
    Rect room = drawing_room(sheet.frame).grown(-sheet_edge);
    const double half = (room.height() - sheet_edge) / 2;
    (place == 0 ? room.bottom : room.top) = place == 0 ? room.top - half : room.bottom + half;
    const double middle = room.left + 0.56 * room.width();
    return {{room.left, room.bottom, middle, room.top},
            {middle + sheet_edge, room.bottom, room.right, room.top}};
}

// Operations by number.
std::vector<std::size_t> pictured(const WorkPlan& plan) {
    std::vector<std::size_t> numbers;
    for (std::size_t i = 0; i < plan.operations.size(); ++i) {
        if (has_picture(plan, plan.operations[i])) numbers.push_back(i);
    }
    return numbers;
}

}  // namespace

std::size_t glue_up_sheet_count(const Context& context) {
    if (context.input.work == nullptr) return 0;
    return (pictured(*context.input.work).size() + on_a_sheet - 1) / on_a_sheet;
}

Draft glue_up_sheet(const Context& context, std::size_t number) {
    const WorkPlan& plan = *context.input.work;
    const std::vector<std::size_t> all = pictured(plan);
    Draft draft = new_draft(context, "glue-ups", "Glue-ups");
    const auto here = std::span(all)
                          .subspan(number * on_a_sheet)
                          .first(std::min(on_a_sheet, all.size() - number * on_a_sheet));
    double height = 2.5;
    for (std::size_t i = 0; i < here.size(); ++i)
        height = flow_height({words_of(context, here[i])}, {places_of(draft.sheet, i).words}, height,
                             context.fonts);
    for (std::size_t i = 0; i < here.size(); ++i) {
        const Places places = places_of(draft.sheet, i);
        const GlueUp& glue_up = plan.glue_ups[*plan.operations[here[i]].glue_up];
        draw_moved(draft.sheet, context, places.picture, {}, glue_up.parts,
                   taken_back(context.piece, glue_up));
        draw_flow(draft.sheet, {words_of(context, here[i])}, {places.words}, height, context.fonts);
    }
    return draft;
}

}  // namespace rodwright::packet
