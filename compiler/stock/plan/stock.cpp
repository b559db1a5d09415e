#include "compiler/stock/plan/stock.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "compiler/stock/rack/board_foot.hpp"
#include "compiler/stock/rough/flatten.hpp"

namespace rodwright {
namespace {

// Wood that is there already and of which nobody knows a price: a unit of worth the board foot.
const Rational unpriced = 1;
// Offcuts are used up first: they are worth half of what a whole board would be (assumption).
const Rational offcut_share = ratio(1, 2);
// Sheets are bought at the thickness that is drawn, but come a little thinner or thicker.
const Rational sheet_tolerance = ratio(8, 10);

// A cut is empty where nobody says. Square parts can be turned on their sides, so any cut will do.
bool cut_will_do(const StockQuery& query, const std::string& has) {
    return query.square || query.wood.cut.empty() || has.empty() || query.wood.cut == has;
}

Rational smaller(const Rational& a, const Rational& b) {
    return a < b ? a : b;
}

// Where a board tapers its far edge is taken in steps.
std::vector<PlanArea> lost_to_taper(const RackBoard& board, const PlanArea& usable) {
    constexpr int steps = 8;
    const Rational slope = (board.far_width - board.width) / board.length;
    const auto width_at = [&](const Rational& from_end) -> Rational {
        return board.width + slope * from_end - board.sapwood;
    };
    std::vector<PlanArea> lost;
    for (int i = 0; i < steps; ++i) {
        const Rational start = usable.from_end + usable.length * i / steps;
        const Rational length = usable.length / steps;
        const Rational width = std::max<Rational>(0, smaller(width_at(start), width_at(start + length)));
        if (width < usable.width) lost.push_back({start, width, length, usable.width - width});
    }
    return lost;
}

PlanArea area_of(const WoodDefect& defect) {
    return {defect.from_end, defect.from_edge, defect.length, defect.width};
}

Rational dealers_price(const Rack& rack, const RackBoard& board) {
    for (const LumberOffer& offer : rack.lumber) {
        if (offer.species == board.species) return offer.price;
    }
    return unpriced;
}

// What is sawn off a bad end goes with the kerf of that cut.
Rational sawn_off(const Rational& bad, const Rational& kerf) {
    return bad > 0 ? std::max(bad, kerf) : Rational(0);
}

Stock stock_of(const RackBoard& board, const Rack& rack, const MillingData& milling) {
    Stock stock;
    stock.board.name = board.name;
    stock.board.origin = board.name;
    stock.board.species = board.species;
    stock.board.cut = board.cut;
    stock.board.length = board.length;
    stock.board.width = board.width;
    stock.board.far_width = board.far_width;
    stock.board.thickness = board.thickness;
    stock.board.checks = board.checks;
    stock.board.far_checks = board.far_checks;
    stock.board.sapwood = board.sapwood;
    for (const WoodDefect& defect : board.defects)
        stock.board.defects.push_back({area_of(defect), defect.face});
    stock.board.price = board.price;
    const Rational& widest = std::max(board.width, board.far_width);
    const Rational near_end = sawn_off(board.checks, milling.kerf(milling.saws.crosscut));
    stock.usable = {near_end, 0, board.length - near_end - board.far_checks, widest};
    stock.barred = stock.board.defects;
    for (const PlanArea& lost : lost_to_taper(board, stock.usable)) stock.barred.push_back({lost});
    stock.count = board.count;
    const Rational whole = board.price ? *board.price : board_feet(board) * dealers_price(rack, board);
    stock.worth = board.offcut ? Rational(whole * offcut_share) : whole;
    return stock;
}

Stock stock_of(const RackSheet& sheet, const MillingData& milling) {
    const bool across = sheet.grain == FaceGrain::along_width;
    Stock stock;
    stock.board.name = sheet.name;
    stock.board.origin = sheet.name;
    stock.board.species = sheet.species;
    stock.board.sheet = true;
    stock.board.grain_across = across;
    stock.board.length = across ? sheet.width : sheet.length;
    stock.board.width = across ? sheet.length : sheet.width;
    stock.board.far_width = stock.board.width;
    stock.board.thickness = sheet.thickness;
    stock.board.trim = sheet.trim;
    for (const WoodDefect& defect : sheet.defects) {
        PlanArea area = area_of(defect);
        if (across) area = {area.from_edge, area.from_end, area.width, area.length};
        stock.board.defects.push_back({area});
    }
    stock.board.price = sheet.price;
    const Rational near_edge = sawn_off(sheet.trim, milling.kerf(milling.saws.sheets));
    stock.usable = {near_edge, near_edge, stock.board.length - near_edge - sheet.trim,
                    stock.board.width - near_edge - sheet.trim};
    stock.barred = stock.board.defects;
    stock.count = sheet.count;
    stock.board.no_grain = sheet.grain == FaceGrain::none;
    const Rational foot = ratio(3048, 10);
    const Rational square_feet = sheet.length * sheet.width / (foot * foot);
    const Rational whole = sheet.price ? *sheet.price : Rational(square_feet * unpriced);
    stock.worth = sheet.offcut ? Rational(whole * offcut_share) : whole;
    return stock;
}

// The longest piece takes the largest share of a board's warp.
bool thick_enough(const RackBoard& board, const StockQuery& query, const MillingData& milling) {
    const Rational length_share = smaller(1, query.longest / board.length);
    const Rational width_share = smaller(1, query.widest / board.width);
    const Warp warp = warp_of_piece(board.warp, length_share, width_share);
    const Rational finished = query.least_thickness - milling.allowances.faces;
    return thickness_needed(finished, warp, board.surfaced, milling) <= board.thickness;
}

// Of all lengths by the foot, a few: the search for a plan grows with every kind of board.
std::vector<Rational> lengths_for_sale(const LumberOffer& offer) {
    constexpr int most = 8;
    const Rational foot = ratio(3048, 10);
    const int feet =
        static_cast<int>(Rational(floor((offer.longest - offer.shortest) / foot)).get_num().get_si());
    const int every = feet / most + 1;
    std::vector<Rational> lengths;
    for (int i = 0; i <= feet; i += every) lengths.push_back(offer.shortest + foot * i);
    if (lengths.back() < offer.longest) lengths.push_back(offer.longest);
    return lengths;
}

// Random widths are planned as the narrowest that may come; where a piece is wider, that width is asked for.
std::vector<Rational> widths_for_sale(const LumberOffer& offer, const Rational& widest_piece) {
    const Rational half_inch = ratio(127, 10);
    std::vector<Rational> widths = {offer.narrowest};
    const Rational asked = ceil(widest_piece / half_inch) * half_inch;
    if (asked > offer.narrowest && asked <= offer.widest) widths.push_back(asked);
    return widths;
}

Stock lumber(const LumberOffer& offer, const Rational& thickness, const Rational& length,
             const Rational& width, const StockQuery& query, const LengthStyle& style) {
    Stock stock;
    stock.board.species = offer.species;
    stock.board.cut = offer.cut;
    stock.board.length = length;
    stock.board.width = width;
    stock.board.far_width = width;
    stock.board.thickness = thickness;
    stock.usable = {0, 0, length, width};
    stock.board.board_feet = board_feet(thickness, width, length);
    stock.price = stock.board.board_feet * offer.price;
    stock.board.price = stock.price;
    stock.board.lumber =
        fmt::format("{}{}, {} rough", query.wood.common, offer.cut.empty() ? "" : ", " + offer.cut,
                    format_length(thickness, style));
    stock.board.offer = fmt::format("{}, at least {} wide, {} long", stock.board.lumber,
                                    format_length(width, style), format_length(length, style));
    return stock;
}

Stock sheet_for_sale(const SheetOffer& offer, const StockQuery& query, const MillingData& milling,
                     const LengthStyle& style) {
    RackSheet sheet;
    sheet.species = offer.species;
    sheet.thickness = offer.thickness;
    sheet.length = offer.length;
    sheet.width = offer.width;
    sheet.grain = offer.grain;
    sheet.trim = milling.buying.sheet_trim;
    sheet.price = offer.price;
    Stock stock = stock_of(sheet, milling);
    stock.count.reset();
    stock.worth = 0;
    stock.price = offer.price;
    stock.board.offer =
        fmt::format("{}, {}, sheet {} x {}", query.wood.common, format_length(offer.thickness, style),
                    format_length(offer.length, style), format_length(offer.width, style));
    return stock;
}

}  // namespace

std::vector<Stock> stock_at_hand(const Rack& rack, const StockQuery& query, const MillingData& milling,
                                 std::vector<std::string>& notes) {
    std::vector<Stock> result;
    for (const RackBoard& board : rack.boards) {
        if (query.sheet || board.species != query.wood.species) continue;
        if (!cut_will_do(query, board.cut)) continue;
        if (thick_enough(board, query, milling)) {
            result.push_back(stock_of(board, rack, milling));
        } else if (board.thickness >= query.least_thickness) {
            notes.push_back(
                fmt::format("{} is not used for {}: flattening its bow, cup and twist takes too much "
                            "of its thickness from pieces as long and wide as these",
                            board.name, query.title));
        }
    }
    for (const RackSheet& sheet : rack.sheets) {
        if (!query.sheet || sheet.species != query.wood.species) continue;
        if (abs(sheet.thickness - query.least_thickness) <= sheet_tolerance)
            result.push_back(stock_of(sheet, milling));
    }
    // What checks or trim leave next to nothing of.
    constexpr int least = 10;  // mm
    std::erase_if(
        result, [](const Stock& stock) { return stock.usable.length < least || stock.usable.width < least; });
    return result;
}

std::vector<Stock> stock_for_sale(const Rack& rack, const StockQuery& query, const MillingData& milling,
                                  const LengthStyle& style) {
    std::vector<Stock> result;
    for (const LumberOffer& offer : rack.lumber) {
        if (query.sheet || offer.species != query.wood.species || !cut_will_do(query, offer.cut)) continue;
        const auto thickness = std::ranges::find_if(
            offer.thicknesses, [&](const Rational& rough) { return rough >= query.least_thickness; });
        if (thickness == offer.thicknesses.end()) continue;
        for (const Rational& width : widths_for_sale(offer, query.widest)) {
            for (const Rational& length : lengths_for_sale(offer)) {
                result.push_back(lumber(offer, *thickness, length, width, query, style));
            }
        }
    }
    for (const SheetOffer& offer : rack.sheet_offers) {
        const bool fits = query.sheet && offer.species == query.wood.species &&
                          abs(offer.thickness - query.least_thickness) <= sheet_tolerance;
        if (fits) result.push_back(sheet_for_sale(offer, query, milling, style));
    }
    return result;
}

std::vector<Stock> stock_left_over(const WoodPlan& plan, const PlanGroup& group, const StockQuery& query) {
    std::vector<Stock> result;
    for (const std::size_t index : group.boards) {
        const PlannedBoard& board = plan.boards[index];
        if (board.thickness < query.least_thickness || !cut_will_do(query, board.cut)) continue;
        for (const PlanRegion& region : board.regions) {
            if (region.kind != PlanRegion::Kind::offcut) continue;
            Stock stock;
            stock.board = board;
            stock.usable = region.area;
            std::ranges::copy_if(board.defects, std::back_inserter(stock.barred),
                                 [&](const PlanDefect& defect) { return defect.area.overlaps(region.area); });
            stock.count = 1;
            stock.left_of = index;
            result.push_back(std::move(stock));
        }
    }
    return result;
}

}  // namespace rodwright
