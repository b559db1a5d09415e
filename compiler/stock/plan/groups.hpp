// Pieces of one wood and thickness: what is planned together.
#pragma once

#include "compiler/stock/plan/plan_wood.hpp"
#include "compiler/stock/plan/stock.hpp"

namespace rodwright {

struct DemandGroup {
    const Wood* wood = nullptr;
    bool sheet = false;
    bool square = false;  // as thick as wide, so that it does not matter how the board was cut
    Rational least_thickness;
    std::string title;  // "white ash, quartered, 4/4"
    std::vector<Demand> demands;
    std::vector<PanelDemand> panels;
    std::optional<Rational> resawn_from;  // thickness of boards that are sawn open for it

    // With room for all pieces and staves of the group. The lengths and widths are the largest of any.
    StockQuery query() const;
    // Adds what is as thick or thinner and comes out of the same boards.
    void take_in(DemandGroup thinner);
};

// In the order of the design's woods; of one wood the thickest first. Parts of no wood are left out.
std::vector<DemandGroup> grouped(const Piece& piece, Demands demands);

// "white ash, quartered"
std::string wood_title(const Wood& wood);

// Whether a board of that stock is long and wide enough for the demand.
bool holds(const Stock& stock, const Demand& demand);

}  // namespace rodwright
