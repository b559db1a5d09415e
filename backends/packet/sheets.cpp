#include "backends/packet/sheets.hpp"

#include <functional>
#include <iterator>

#include "compiler/at_once.hpp"

namespace rodwright::packet {

namespace {

using Drafts = std::vector<Draft>;
using SheetWork = std::function<Drafts()>;

Drafts alone(Draft draft) {
    Drafts drafts;
    drafts.push_back(std::move(draft));
    return drafts;
}

// What makes the sheets, in their order; the cover comes first and has its picture only.
std::vector<SheetWork> sheet_works(const Context& context, const std::vector<Template>& templates) {
    std::vector<SheetWork> works;
    works.push_back([&] { return alone(cover_picture(context)); });
    works.push_back([&] { return alone(arrangement_sheet(context)); });
    if (!context.piece.joints.empty()) {
        works.push_back([&] { return alone(section_sheet(context)); });
        works.push_back([&] { return alone(taken_apart_sheet(context)); });
    }
    for (std::size_t i = 0; i < context.piece.kinds.size(); ++i) {
        if (context.piece.kinds[i].mirror_of) continue;  // a note on the sheet of the kind it mirrors
        works.push_back([&context, i] { return part_sheets(context, static_cast<KindId>(i)); });
    }
    for (const DistinctJoint& joint : distinct_joints(context.piece))
        works.push_back([&context, joint] { return alone(joint_sheet(context, joint)); });
    works.push_back([&] { return template_sheets(context, templates); });
    works.push_back([&] { return cut_list_sheets(context); });
    works.push_back([&] { return board_sheets(context); });
    works.push_back([&] { return buying_sheets(context); });
    works.push_back([&] { return set_up_sheets(context); });
    works.push_back([&] { return step_sheets(context); });
    for (std::size_t i = 0; i < glue_up_sheet_count(context); ++i)
        works.push_back([&context, i] { return alone(glue_up_sheet(context, i)); });
    works.push_back([&] { return timeline_sheets(context); });
    works.push_back([&] { return number_sheets(context); });
    return works;
}

Drafts make_drafts(const std::vector<SheetWork>& works) {
    std::vector<Drafts> made(works.size());
    at_once(works.size(), [&](std::size_t i) { made[i] = works[i](); });
    Drafts drafts;
    for (Drafts& each : made)
        drafts.insert(drafts.end(), std::make_move_iterator(each.begin()),
                      std::make_move_iterator(each.end()));
    return drafts;
}

}  // namespace

std::vector<drawing::Sheet> packet_sheets(const Context& context, const std::vector<Template>& templates) {
    Drafts drafts = make_drafts(sheet_works(context, templates));
    for (std::size_t i = 0; i < drafts.size(); ++i) drafts[i].block.sheet = i + 1;
    write_cover(drafts.front(), context, std::span(drafts).subspan(1));
    std::vector<drawing::Sheet> sheets;
    for (Draft& draft : drafts) {
        draft.block.sheets = drafts.size();
        draft.sheet.anchors.push_back(sheet_anchor(draft.block.sheet));
        draw_title_block(draft.sheet, draft.block, context.fonts);
        sheets.push_back(std::move(draft.sheet));
    }
    return sheets;
}

}  // namespace rodwright::packet
