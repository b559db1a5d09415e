// Do its sizes suit the people who use it? Advice, by what the design says it is used as.
#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "compiler/check/checks.hpp"
#include "compiler/check/words.hpp"

namespace rodwright {

namespace {

constexpr double inch = 25.4;

// What a size should lie between, mm.
struct Usual {
    std::string_view what;  // "height of the seat"
    double least = 0;
    double most = 0;
    std::string_view source;
};

constexpr Usual usual_seat = {
    "height of the seat", 380, 560,
    "HFES 100-2007, seats that can be set from 15 to 22 in (from memory); EN 1729-1:2006 has "
    "460 mm for adults"};
constexpr Usual usual_table = {"height of the top", 26 * inch, 34 * inch,
                               "ADA Standards 902.3 and 902.4: 28 to 34 in, 26 in for children"};
constexpr Usual usual_desk = {
    "height of the top", 26 * inch, 34 * inch,
    "ADA Standards 902.3: 28 to 34 in; 26 in for typing (common practice, no source)"};
constexpr Usual usual_knees = {
    "room for knees under the top", 24 * inch, 1e9,
    "ADA Standards 306.3: 27 in for wheelchairs, 24 in for children; 24 in is usual (common "
    "practice, no source)"};
constexpr Usual usual_books = {"depth of the shelves", 8 * inch, 14 * inch,
                               "8 to 12 in (common practice, no source)"};

class PeopleCheck {
  public:
    PeopleCheck(const Piece& piece, Findings& findings) : piece_(piece), findings_(findings) {}

    void look_at(const Use& use) {
        if (use.what == "seat") {
            held_against(usual_seat, top_of(use), use);
        } else if (use.what == "table" || use.what == "desk") {
            held_against(use.what == "desk" ? usual_desk : usual_table, top_of(use), use);
            if (const auto knees = knee_room()) held_against(usual_knees, *knees, use);
        } else if (use.what == "shelf" && use.detail == "books") {
            if (const auto depth = least_depth(use)) held_against(usual_books, *depth, use);
        }
    }

  private:
    const Piece& piece_;
    Findings& findings_;

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

    void held_against(const Usual& usual, double size, const Use& use) {
        Number number;
        number.check = "people";
        number.title = std::string(usual.what);
        number.value = computed_length(size);
        number.limit = computed_length(size > usual.most ? usual.most : usual.least);
        number.formula = "measured from the floor, or along the part";
        number.source = std::string(usual.source);
        findings_.numbers.push_back(std::move(number));
        if (size >= usual.least && size <= usual.most) return;
        const bool small = size < usual.least;
        findings_.diagnostics.add(
            diagnose(
                Code::unusual_size, use.where,
                fmt::format("the {} is {}, and {} or {} is usual", usual.what, about(size, piece_.style),
                            about(small ? usual.least : usual.most, piece_.style), small ? "more" : "less"))
                .note(std::string(usual.source))
                .hint("change the size, or accept it with the reason"));
    }
};

}  // namespace

void check_people(const CheckInput& input, Findings& findings) {
    PeopleCheck check(input.piece, findings);
    for (const Use& use : input.piece.uses) check.look_at(use);
}

}  // namespace rodwright
