#include "compiler/stock/plan/saw_choice.hpp"

#include <algorithm>

namespace rodwright {
namespace {

constexpr const char* table_saw = "table_saw";
constexpr const char* mitre_saw = "mitre_saw";
constexpr const char* circular_saw = "circular_saw";

class SawChoice {
  public:
    SawChoice(const PlannedBoard& board, const PlannedCut& cut, const SawLimits& limits)
        : limits_(limits),
          sheet_(board.sheet),
          crosscut_(cut.crosscut),
          area_(board.regions[cut.of].area),
          setting_(cut.setting),
          run_(cut.crosscut ? area_.width : area_.length) {
        const Rational& divided = cut.crosscut ? area_.length : area_.width;
        const Rational& kerf = cut.crosscut ? board.crosscut_kerf : board.rip_kerf;
        held_ = std::max<Rational>(setting_, divided - setting_ - kerf);
    }

    bool takes(const std::string& saw) const {
        if (saw == mitre_saw) return run_ <= limits_.widest_mitre_saw && can_be_held();
        if (saw == table_saw) return is_broken_down() && (fits_fence() || fits_sled());
        return saw != circular_saw || is_not_too_small();
    }
    // For any machine that is listed here.
    bool is_not_too_small() const { return run_ >= limits_.shortest_rip || can_be_held(); }
    // Between blade and stop nobody can hold it.
    bool is_loose(const std::string& saw) const {
        const bool has_stop = saw == mitre_saw || saw == table_saw;
        return has_stop && crosscut_ && !sheet_ && setting_ < limits_.shortest_mitre_saw;
    }
    bool is_narrow() const { return fits_fence() && setting_ < limits_.narrowest_rip; }

  private:
    const SawLimits& limits_;
    bool sheet_;
    bool crosscut_;
    const PlanArea& area_;
    const Rational& setting_;
    Rational run_;   // of the cut, from edge to edge
    Rational held_;  // the larger side of the cut, square to it

    bool can_be_held() const { return held_ >= limits_.shortest_mitre_saw; }
    // Solid wood is never crosscut with the fence as a stop.
    bool fits_fence() const {
        return (sheet_ || !crosscut_) && run_ >= limits_.shortest_rip && setting_ <= limits_.widest_rip;
    }
    bool fits_sled() const { return run_ <= limits_.longest_crosscut && can_be_held(); }
    // A strip of a sheet is handled like a board, however long.
    bool is_broken_down() const {
        const Rational& longer = std::max(area_.length, area_.width);
        const Rational& shorter = std::min(area_.length, area_.width);
        return !sheet_ || shorter <= limits_.shortest_rip ||
               (longer <= limits_.sheet_length && shorter <= limits_.sheet_width);
    }
};

std::vector<std::string> saws_in_turn(const PlannedBoard& board, const PlannedCut& cut, const Saws& saws) {
    if (board.sheet) return {table_saw, saws.sheets, circular_saw};
    return {cut.crosscut ? saws.crosscut : saws.rip, table_saw, circular_saw};
}

}  // namespace

void choose_saws(PlannedBoard& board, const MillingData& milling) {
    for (PlannedCut& cut : board.cuts) {
        const SawChoice choice(board, cut, milling.saw_limits);
        const std::vector<std::string> saws = saws_in_turn(board, cut, milling.saws);
        const Rational& kerf = cut.crosscut ? board.crosscut_kerf : board.rip_kerf;
        const auto found = std::ranges::find_if(saws, [&](const std::string& saw) {
            const auto own = milling.kerfs.find(saw);
            return own != milling.kerfs.end() && own->second <= kerf && choice.takes(saw);
        });
        cut.saw = found != saws.end() ? *found : cut.crosscut ? "hand_crosscut_saw" : "hand_rip_saw";
        cut.usual_saw = cut.saw == (board.sheet ? milling.saws.sheets : saws.front());
        cut.care = CutCare::none;
        if (cut.saw == table_saw && choice.is_narrow()) cut.care = CutCare::narrow;
        if (choice.is_loose(cut.saw)) cut.care = CutCare::no_stop;
        if (found == saws.end() && !choice.is_not_too_small()) cut.care = CutCare::by_hand;
    }
}

std::size_t cuts_by_hand(const WoodPlan& plan) {
    std::size_t count = 0;
    for (const PlannedBoard& board : plan.boards)
        count +=
            static_cast<std::size_t>(std::ranges::count(board.cuts, CutCare::by_hand, &PlannedCut::care));
    return count;
}

}  // namespace rodwright
