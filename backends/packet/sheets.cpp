#include "backends/packet/sheets.hpp"

#include <iterator>

namespace rodwright::packet {

namespace {

void append(std::vector<Draft>& drafts, std::vector<Draft> more) {
    drafts.insert(drafts.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

// Every sheet after the cover.
std::vector<Draft> following_sheets(const Context& context, const std::vector<Template>& templates) {
    std::vector<Draft> drafts;
    drafts.push_back(arrangement_sheet(context));
    if (!context.piece.joints.empty()) drafts.push_back(taken_apart_sheet(context));
    for (std::size_t i = 0; i < context.piece.kinds.size(); ++i) {
        if (context.piece.kinds[i].mirror_of) continue;  // a note on the sheet of the kind it mirrors
        append(drafts, part_sheets(context, static_cast<KindId>(i)));
    }
    for (const DistinctJoint& joint : distinct_joints(context.piece))
        drafts.push_back(joint_sheet(context, joint));
    append(drafts, template_sheets(context, templates));
    append(drafts, cut_list_sheets(context));
    append(drafts, step_sheets(context));
    return drafts;
}

}  // namespace

std::vector<drawing::Sheet> packet_sheets(const Context& context, const std::vector<Template>& templates) {
    std::vector<Draft> drafts = following_sheets(context, templates);
    for (std::size_t i = 0; i < drafts.size(); ++i) drafts[i].block.sheet = i + 2;
    drafts.insert(drafts.begin(), cover_sheet(context, drafts));
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
