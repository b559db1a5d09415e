#include "compiler/stock/plan/dowels.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/cutting/solve.hpp"

namespace rodwright {
namespace {

struct Dowels {
    Rational diameter;
    Rational length;
    int count = 0;
    std::string note;  // as the joint's supply has it
};

std::optional<Rational> length_named(const Work& work, std::string_view name) {
    for (const auto& [known, quantity] : work.numbers) {
        if (known == name && quantity.is_length()) return quantity.value;
    }
    return std::nullopt;
}

std::vector<Dowels> dowels_of(const Piece& piece) {
    std::vector<Dowels> all;
    for (const JointKind& kind : piece.joint_kinds) {
        const std::optional<Rational> diameter = length_named(kind.work, "diameter");
        const std::optional<Rational> length = length_named(kind.work, "long");
        for (const Supply& supply : kind.work.supplies) {
            if (supply.name != "dowel" || !diameter || !length) continue;
            const Rational count = supply.count * static_cast<long>(kind.joints.size());
            all.push_back({*diameter, *length, static_cast<int>(count.get_num().get_si()),
                           read_out(supply.note, piece.style)});
        }
    }
    return all;
}

class Rods {
  public:
    Rods(const Planning& planning, const Rational& diameter, WoodPlan& plan)
        : planning_(planning), diameter_(diameter), plan_(plan) {
        for (const DowelOffer& offer : planning.rack.dowels) {
            if (offer.diameter == diameter) offers_.push_back(&offer);
        }
    }

    void add(const std::vector<Dowels>& dowels) {
        cutting::Problem problem;
        problem.kerf = {{planning_.grid.up(planning_.milling.kerf(planning_.milling.saws.crosscut)), 0}};
        for (const DowelOffer* offer : offers_) {
            cutting::StockPiece rod;
            rod.size = {{planning_.grid.down(offer->length), 1}};
            rod.cost = std::max(1L, Rational(ceil(offer->price * 100)).get_num().get_si());
            problem.stock.push_back(rod);
        }
        std::vector<std::string> notes;
        for (const Dowels& each : dowels) {
            if (each.diameter != diameter_) continue;
            problem.parts.push_back({{{planning_.grid.up(each.length), 1}}, each.count, false});
            notes.push_back(each.note);
        }
        if (offers_.empty()) return say_missing();
        const cutting::CuttingPlan solved = cutting::solve(problem, cutting::Effort::quick);
        if (!solved.complete()) return say_missing();
        for (std::size_t i = 0; i < offers_.size(); ++i) buy(*offers_[i], rods_of(solved, i), notes);
    }

  private:
    const Planning& planning_;
    const Rational& diameter_;
    WoodPlan& plan_;
    std::vector<const DowelOffer*> offers_;

    std::string shown(const Rational& length) const { return format_length(length, planning_.piece.style); }

    void say_missing() {
        plan_.notes.push_back(
            fmt::format("no rod is sold for the dowels of {}; buy them ready made", shown(diameter_)));
    }

    static int rods_of(const cutting::CuttingPlan& solved, std::size_t offer) {
        return static_cast<int>(
            std::ranges::count(solved.sheets, static_cast<int>(offer), &cutting::CutTree::stock));
    }

    void buy(const DowelOffer& offer, int count, const std::vector<std::string>& notes) {
        if (count == 0) return;
        Purchase purchase;
        purchase.text = fmt::format("{} dowel rod, {} thick, {} long", offer.common, shown(offer.diameter),
                                    shown(offer.length));
        purchase.count = count;
        purchase.price = offer.price * count;
        purchase.supplies = notes;
        plan_.purchases.push_back(std::move(purchase));
    }
};

}  // namespace

void add_dowel_rods(const Planning& planning, WoodPlan& plan) {
    if (planning.rack.dowels.empty()) return;
    const std::vector<Dowels> dowels = dowels_of(planning.piece);
    std::vector<Rational> diameters;
    for (const Dowels& each : dowels) {
        if (std::ranges::find(diameters, each.diameter) == diameters.end())
            diameters.push_back(each.diameter);
    }
    for (const Rational& diameter : diameters) Rods(planning, diameter, plan).add(dowels);
}

}  // namespace rodwright
