#include "compiler/stock/plan/demand.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/rough/flatten.hpp"

namespace rodwright {
namespace {

// The parts of each kind that have not been given a piece yet.
class PartsLeft {
  public:
    explicit PartsLeft(const Piece& piece) {
        for (const Kind& kind : piece.kinds) parts_.push_back({kind.parts.rbegin(), kind.parts.rend()});
    }

    PartId take(KindId kind) {
        std::vector<PartId>& left = parts_[static_cast<std::size_t>(kind)];
        const PartId part = left.back();
        left.pop_back();
        return part;
    }

  private:
    std::vector<std::vector<PartId>> parts_;
};

std::string label_of(const Piece& piece, const std::vector<PlannedPart>& parts) {
    std::string label;
    for (const PlannedPart& each : parts)
        label += (label.empty() ? "" : "+") + piece[piece[each.part].kind].letter;
    return label;
}

Demand demand_of(const Piece& piece, const Blank& blank, PartsLeft& left) {
    Demand demand;
    demand.wood = piece[blank.kinds.front()].wood;
    demand.thickness_class = blank.thickness_class;
    demand.sheet = blank.sheet;
    demand.size = blank.size;
    for (int i = 0; i < blank.count; ++i) {
        PlannedPiece planned;
        for (const KindId kind : blank.kinds) planned.parts.push_back({left.take(kind)});
        planned.label = label_of(piece, planned.parts);
        planned.size = blank.size;
        demand.label = planned.label;
        demand.pieces.push_back(std::move(planned));
    }
    return demand;
}

bool matched_alone(const Piece& piece, const std::vector<PartId>& panels) {
    return std::ranges::any_of(piece.matches, [&](const Match& match) {
        return std::ranges::find(match.parts, panels.front()) != match.parts.end();
    });
}

PanelDemand panel_of(const Piece& piece, const PanelNeed& need) {
    const Kind& kind = piece[need.kind];
    return {need, kind.parts, kind.wood, kind.letter, matched_alone(piece, kind.parts)};
}

// Blanks of parts that are cut out of one piece side by side or end to end keep their own allowances.
Vector rough_box(const Kind& kind, const MillingData& milling) {
    Vector size;
    size[Axis::wide] = kind.cut(Axis::wide) + 2 * milling.allowances.end;
    size[Axis::deep] = kind.cut(Axis::deep) + 2 * milling.allowances.edge;
    size[Axis::tall] = thickness_needed(kind.cut(Axis::tall), {}, false, milling);
    return size;
}

std::string class_name(const Kind& kind, const MillingData& milling) {
    const ThicknessClass* found = milling.class_for(kind.cut(Axis::tall));
    return found == nullptr ? std::string{} : found->name;
}

Demand single(const Piece& piece, const std::vector<PartId>& parts, const Vector& size,
              const MillingData& milling) {
    const Kind& kind = piece[piece[parts.front()].kind];
    Demand demand;
    demand.wood = kind.wood;
    demand.thickness_class = class_name(kind, milling);
    demand.size = size;
    demand.size[Axis::wide] = std::max(size[Axis::wide], milling.shortest_milled());
    PlannedPiece planned;
    for (const PartId part : parts) planned.parts.push_back({part});
    planned.label = demand.label = label_of(piece, planned.parts);
    planned.size = demand.size;
    demand.pieces.push_back(std::move(planned));
    return demand;
}

Demand strip_of(const Piece& piece, const Match& match, const MillingData& milling) {
    Vector size;
    const Rational& kerf = milling.kerf(milling.saws.crosscut);
    for (const PartId part : match.parts) {
        const Vector box = rough_box(piece[piece[part].kind], milling);
        size[Axis::wide] += (size[Axis::wide] > 0 ? kerf : Rational(0)) + box[Axis::wide];
        size[Axis::deep] = std::max(size[Axis::deep], box[Axis::deep]);
        size[Axis::tall] = box[Axis::tall];
    }
    return single(piece, match.parts, size, milling);
}

// One piece of twice the thickness, and what the saw and the cleaning of the sawn faces take.
Demand book_of(const Piece& piece, const Match& match, const MillingData& milling) {
    Vector size = rough_box(piece[piece[match.parts.front()].kind], milling);
    for (const PartId part : match.parts) {
        const Vector box = rough_box(piece[piece[part].kind], milling);
        for (const Axis axis : {Axis::wide, Axis::deep}) size[axis] = std::max(size[axis], box[axis]);
    }
    const Rational leaf = piece[piece[match.parts.front()].kind].cut(Axis::tall);
    size[Axis::tall] = 2 * (leaf + 2 * milling.allowances.resawn_face) + milling.kerf(milling.saws.resaw);
    Demand demand = single(piece, match.parts, size, milling);
    const ThicknessClass* found = milling.class_for(size[Axis::tall] - milling.allowances.faces);
    demand.thickness_class = found == nullptr ? std::string{} : found->name;
    demand.pieces.front().leaves = 2;
    return demand;
}

bool is_panel(const Piece& piece, PartId part) {
    return piece[piece[part].kind].glued.has_value();
}

}  // namespace

Piece without_made(const Piece& piece) {
    Piece rest = piece;
    const auto is_made = [&](PartId part) { return piece[part].made; };
    for (Kind& kind : rest.kinds) std::erase_if(kind.parts, is_made);
    for (Match& match : rest.matches) std::erase_if(match.parts, is_made);
    // Of a book, one leaf alone is a part like any other.
    std::erase_if(rest.matches, [](const Match& match) {
        return match.parts.empty() || (match.how == MatchKind::book && match.parts.size() < 2);
    });
    return rest;
}

Piece without_matched(const Piece& piece) {
    Piece rest = piece;
    for (const Match& match : piece.matches) {
        for (const PartId part : match.parts) {
            if (!is_panel(piece, part))
                std::erase(rest.kinds[static_cast<std::size_t>(piece[part].kind)].parts, part);
        }
    }
    return rest;
}

std::vector<Demand> taken_singly(const Piece& piece, const Match& match, const MillingData& milling) {
    std::vector<Demand> result;
    for (const PartId part : match.parts) {
        result.push_back(single(piece, {part}, rough_box(piece[piece[part].kind], milling), milling));
    }
    return result;
}

Demands demands_of(const Piece& piece, const MillingData& milling, const RoughSizes& rough) {
    Demands demands;
    const Piece rest = without_matched(piece);
    PartsLeft left(rest);
    for (const Blank& blank : rough.blanks) demands.pieces.push_back(demand_of(piece, blank, left));
    for (const PanelNeed& need : rough.panels) demands.panels.push_back(panel_of(rest, need));
    for (std::size_t i = 0; i < piece.matches.size(); ++i) {
        Match match = piece.matches[i];
        std::erase_if(match.parts, [&](PartId part) { return is_panel(piece, part); });
        if (match.parts.empty()) continue;
        demands.pieces.push_back(match.how == MatchKind::book ? book_of(piece, match, milling)
                                                              : strip_of(piece, match, milling));
        demands.pieces.back().match = i;
    }
    return demands;
}

std::vector<Demand> staves_of(const PanelDemand& panel, const std::vector<Rational>& widths,
                              const MillingData& milling) {
    const int staves = static_cast<int>(widths.size());
    const Rational& kerf = milling.kerf(milling.saws.crosscut);
    std::vector<Demand> result;
    for (std::size_t at = 0; at < panel.panels.size(); ++at) {
        for (int stave = 0; stave < staves; ++stave) {
            Demand demand;
            demand.wood = panel.wood;
            demand.thickness_class = panel.need.thickness_class;
            demand.label = "the staves of " + panel.label;
            demand.one_face = panel.one_face;
            demand.size = panel.need.size;
            demand.size[Axis::deep] = widths[static_cast<std::size_t>(stave)] + 2 * milling.panels.glued_edge;
            PlannedPiece planned;
            planned.label = fmt::format("{} {} of {}", panel.label, stave + 1, staves);
            planned.parts = {{panel.panels[at], stave + 1, staves}};
            planned.size = demand.size;
            const auto same = std::ranges::find(result, demand.size, &Demand::size);
            if (panel.one_board && stave > 0) {
                Demand& strip = result.back();
                strip.size[Axis::wide] += kerf + demand.size[Axis::wide];
                strip.size[Axis::deep] = std::max(strip.size[Axis::deep], demand.size[Axis::deep]);
                strip.pieces.front().label = fmt::format("{} 1 to {}", panel.label, stave + 1);
                strip.pieces.front().size = strip.size;
                strip.pieces.front().parts.push_back(planned.parts.front());
            } else if (same != result.end() && !panel.one_board) {
                same->pieces.push_back(std::move(planned));
            } else {
                demand.pieces.push_back(std::move(planned));
                result.push_back(std::move(demand));
            }
        }
    }
    return result;
}

}  // namespace rodwright
