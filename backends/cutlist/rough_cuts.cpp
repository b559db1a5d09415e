#include "backends/cutlist/rough_cuts.hpp"

#include <algorithm>

namespace rodwright {
namespace {

bool is_of(const Piece& piece, PartId part, KindId kind) {
    return piece[part].kind == kind;
}

// Of parts that are in no match.
std::optional<RoughCut> planned_alone(const RoughSizes& rough, KindId kind) {
    for (const PanelNeed& panel : rough.panels) {
        if (panel.kind == kind && !panel.suggested)
            return RoughCut{panel.size, panel.thickness_class, 1, true};
    }
    for (const Blank& blank : rough.blanks) {
        if (blank.sheet || std::ranges::find(blank.kinds, kind) == blank.kinds.end()) continue;
        return RoughCut{blank.size, blank.thickness_class, blank.kinds.size(), false};
    }
    return std::nullopt;
}

// Of parts that come off the saw together with those they are matched to.
std::optional<RoughCut> planned_together(const Piece& piece, const WoodPlan& plan, KindId kind) {
    for (const PlannedBoard& board : plan.boards) {
        for (const PlannedPiece& planned : board.pieces) {
            if (board.sheet || planned.stave > 0) continue;
            if (std::ranges::none_of(planned.parts, [&](PartId part) { return is_of(piece, part, kind); }))
                continue;
            return RoughCut{planned.size, "", planned.parts.size(), false};
        }
    }
    return std::nullopt;
}

std::vector<std::string> boards_of(const Piece& piece, const WoodPlan& plan, KindId kind) {
    std::vector<std::string> names;
    for (const PlannedBoard& board : plan.boards) {
        const bool holds = std::ranges::any_of(board.pieces, [&](const PlannedPiece& planned) {
            return std::ranges::any_of(planned.parts, [&](PartId part) { return is_of(piece, part, kind); });
        });
        if (holds) names.push_back(board.name);
    }
    return names;
}

}  // namespace

void add_wood_plan(CutList& list, const Piece& piece, const WoodPlan& plan) {
    for (CutGroup& group : list.groups) {
        for (CutRow& row : group.rows) {
            row.rough = planned_alone(plan.rough, row.kind);
            if (!row.rough) row.rough = planned_together(piece, plan, row.kind);
            row.boards = boards_of(piece, plan, row.kind);
            list.has_rough = list.has_rough || row.rough.has_value();
            list.has_boards = list.has_boards || !row.boards.empty();
        }
    }
}

}  // namespace rodwright
