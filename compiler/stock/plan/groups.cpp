#include "compiler/stock/plan/groups.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {
namespace {

// Legs are sawn a little wider than thick.
bool is_square(const Demand& demand) {
    const Rational most = ratio(5, 4);
    return !demand.sheet && demand.size[Axis::deep] <= demand.size[Axis::tall] * most;
}

std::string title_of(const Piece& piece, const Wood& wood, const std::string& thickness_class,
                     const Rational& thickness) {
    // Quarters of an inch are how boards are sold where inches are.
    const bool quarters = piece.style.unit == LengthUnit::inch && !thickness_class.empty();
    return wood_title(wood) + ", " +
           (quarters ? thickness_class : format_length(thickness, piece.style) + " and thicker");
}

// Leaves are sawn out of the middle of a piece, where nobody has looked.
bool shows_one_face(const Piece& piece, const Demand& demand) {
    const auto part_does = [&](const PlannedPart& part) {
        return piece[piece[part.part].kind].one_show_face;
    };
    return std::ranges::all_of(demand.pieces, [&](const PlannedPiece& planned) {
        return planned.leaves == 1 && std::ranges::all_of(planned.parts, part_does);
    });
}

DemandGroup& group_for(std::vector<DemandGroup>& groups, const Piece& piece, const Demand& sample,
                       bool square) {
    for (DemandGroup& group : groups) {
        if (group.wood->name == sample.wood && group.least_thickness == sample.size[Axis::tall] &&
            group.square == square)
            return group;
    }
    DemandGroup group{
        piece.find_wood(sample.wood), sample.sheet, square, sample.size[Axis::tall], {}, {}, {}, {}};
    group.title = title_of(piece, *group.wood, sample.thickness_class, group.least_thickness);
    groups.push_back(std::move(group));
    return groups.back();
}

}  // namespace

std::string wood_title(const Wood& wood) {
    const std::string& name = wood.common.empty() ? wood.species : wood.common;
    return wood.cut.empty() ? name : name + ", " + wood.cut;
}

StockQuery DemandGroup::query() const {
    StockQuery query{title, *wood, sheet, square, least_thickness, 0, 0};
    const auto take_in = [&](const Rational& length, const Rational& width) {
        query.longest = std::max(query.longest, length);
        query.widest = std::max(query.widest, width);
    };
    for (const Demand& demand : demands) take_in(demand.size[Axis::wide], demand.size[Axis::deep]);
    for (const PanelDemand& panel : panels) take_in(panel.need.size[Axis::wide], panel.need.narrowest);
    return query;
}

void DemandGroup::take_in(DemandGroup thinner) {
    square = square && thinner.square;
    for (Demand& demand : thinner.demands) demands.push_back(std::move(demand));
    for (PanelDemand& panel : thinner.panels) panels.push_back(std::move(panel));
}

std::vector<DemandGroup> grouped(const Piece& piece, Demands demands) {
    std::vector<DemandGroup> groups;
    for (Demand& demand : demands.pieces) {
        if (piece.find_wood(demand.wood) == nullptr) continue;
        demand.one_face = shows_one_face(piece, demand);
        group_for(groups, piece, demand, is_square(demand)).demands.push_back(std::move(demand));
    }
    for (PanelDemand& panel : demands.panels) {
        if (piece.find_wood(panel.wood) == nullptr) continue;
        panel.one_face = piece[panel.need.kind].one_show_face && !panel.need.alternating;
        Demand sample;
        sample.wood = panel.wood;
        sample.thickness_class = panel.need.thickness_class;
        sample.size = panel.need.size;
        group_for(groups, piece, sample, false).panels.push_back(std::move(panel));
    }
    std::ranges::stable_sort(groups, [](const DemandGroup& a, const DemandGroup& b) {
        if (a.wood != b.wood) return a.wood < b.wood;
        return a.least_thickness > b.least_thickness;
    });
    return groups;
}

bool holds(const Stock& stock, const Demand& demand) {
    const Rational& length = demand.size[Axis::wide];
    const Rational& width = demand.size[Axis::deep];
    const auto fits = [&](const Rational& along, const Rational& across) {
        return along <= stock.usable.length && across <= stock.usable.width;
    };
    return fits(length, width) || (stock.board.no_grain && fits(width, length));
}

}  // namespace rodwright
