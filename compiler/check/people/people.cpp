// Do its sizes suit the people who use it? Advice, by what the design says it is used as.
#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "compiler/check/check_data.hpp"
#include "compiler/check/checks.hpp"
#include "compiler/check/strength/load_cases.hpp"
#include "compiler/check/words.hpp"

namespace rodwright {

namespace {

constexpr double inch = 25.4;

class PeopleCheck {
  public:
    PeopleCheck(const Piece& piece, Findings& findings) : piece_(piece), findings_(findings) {}

    void look_at(const Use& use) {
        const std::string word = strength::use_word(use);
        for (const UsualSize& usual : check_data().people) {
            if (usual.use != word) continue;
            if (const auto size = measured(usual.measure, use)) held_against(usual, *size, use);
        }
    }

  private:
    const Piece& piece_;
    Findings& findings_;

    std::optional<double> measured(Measure measure, const Use& use) const {
        switch (measure) {
            case Measure::top:
                return top_of(use);
            case Measure::knees:
                return knee_room();
            case Measure::depth:
                return least_depth(use);
            case Measure::spacing:
                return least_spacing(shelves(use));
            case Measure::reach:
                return highest(shelves(use));
        }
        return std::nullopt;
    }

    double floor() const { return piece_.box.low[Axis::tall].get_d(); }

    // Of the parts that the design names, else of the piece.
    double top_of(const Use& use) const {
        double top = piece_.box.high[Axis::tall].get_d();
        if (!use.on.empty()) top = piece_[use.on.front()].body.high[Axis::tall].get_d();
        return top - floor();
    }

    // Under what hangs down at the middle of the front, to the depth of a hand under the edge (8 in at the
    // knees, ADA Standards 306.3); what lies lower than a seat is for the feet.
    std::optional<double> knee_room() const {
        constexpr double seat = 18 * inch;
        constexpr double deep = 8 * inch;
        const double middle =
            Rational((piece_.box.low[Axis::wide] + piece_.box.high[Axis::wide]) / 2).get_d();
        const double front = piece_.box.low[Axis::deep].get_d();
        std::optional<double> room;
        for (const Part& part : piece_.parts) {
            const double under = part.body.low[Axis::tall].get_d() - floor();
            const bool there = part.body.low[Axis::wide] < middle && part.body.high[Axis::wide] > middle &&
                               part.body.low[Axis::deep] < front + deep;
            if (there && under >= seat && (!room || under < *room)) room = under;
        }
        return room;
    }

    std::optional<double> least_depth(const Use& use) const {
        std::optional<double> depth;
        for (const PartId part : use.on) {
            const double deep = piece_[part].body.size(Axis::deep).get_d();
            if (!depth || deep < *depth) depth = deep;
        }
        return depth;
    }

    std::vector<PartId> shelves(const Use& use) const {
        const strength::UseLoads* loads = strength::strength_data().find(strength::use_word(use));
        return loads == nullptr ? use.on : strength::carriers_of(piece_, use, *loads);
    }

    // Clear height between one and the next above it; empty where none lies over another.
    std::optional<double> least_spacing(const std::vector<PartId>& parts) const {
        std::optional<double> least;
        for (const PartId below : parts) {
            for (const PartId above : parts) {
                const Box& low = piece_[below].body;
                const Box& high = piece_[above].body;
                const double room = Rational(high.low[Axis::tall] - low.high[Axis::tall]).get_d();
                const bool over = low.low[Axis::wide] < high.high[Axis::wide] &&
                                  high.low[Axis::wide] < low.high[Axis::wide];
                if (over && room > 0 && (!least || room < *least)) least = room;
            }
        }
        return least;
    }

    std::optional<double> highest(const std::vector<PartId>& parts) const {
        std::optional<double> top;
        for (const PartId part : parts) {
            const double height = piece_[part].body.high[Axis::tall].get_d() - floor();
            if (!top || height > *top) top = height;
        }
        return top;
    }

    void held_against(const UsualSize& usual, double size, const Use& use) {
        Number number;
        number.check = "people";
        number.title = usual.what;
        number.value = computed_length(size);
        const bool from_above = size > usual.most || usual.least == 0;
        number.limit = computed_length(from_above ? usual.most : usual.least);
        number.formula = "measured from the floor, or along the part";
        number.source = usual.source;
        findings_.numbers.push_back(std::move(number));
        if (size >= usual.least && size <= usual.most) return;
        const bool small = size < usual.least;
        findings_.diagnostics.add(
            diagnose(
                Code::unusual_size, use.where,
                fmt::format("the {} is {}, and {} or {} is usual", usual.what, about(size, piece_.style),
                            about(small ? usual.least : usual.most, piece_.style), small ? "more" : "less"))
                .note(usual.source)
                .hint("change the size, or accept it with the reason"));
    }
};

}  // namespace

void check_people(const CheckInput& input, Findings& findings) {
    PeopleCheck check(input.piece, findings);
    for (const Use& use : input.piece.uses) check.look_at(use);
}

}  // namespace rodwright
