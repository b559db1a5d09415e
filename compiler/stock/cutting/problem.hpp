// What is to be cut from what, and by which rules: the input of the cutting core, as a value.
//
// All sizes are whole numbers of one unit of the caller's choice (at most max_size); the core never sees
// anything else. The first size of a rectangle lies along the length of the stock piece, the second across
// it.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace rodwright::cutting {

inline constexpr int max_size = 1 << 26;

// Whole sums of sizes, areas and money.
using Amount = std::int64_t;

// An axis of a stock piece. A cut "along" the length separates sizes[across], and the other way round; to
// keep the two apart a cut is always named by the axis that it divides.
enum class Axis : std::uint8_t { length, width };

inline constexpr Axis other(Axis axis) {
    return axis == Axis::length ? Axis::width : Axis::length;
}

struct Size {
    std::array<int, 2> along{};  // by axis

    int& operator[](Axis axis) { return along[static_cast<std::size_t>(axis)]; }
    int operator[](Axis axis) const { return along[static_cast<std::size_t>(axis)]; }
    Amount area() const { return static_cast<Amount>(along[0]) * along[1]; }
    Size turned() const { return {{along[1], along[0]}}; }
    bool reaches(Size least) const { return along[0] >= least.along[0] && along[1] >= least.along[1]; }
    Size grown(Size by) const { return {{along[0] + by.along[0], along[1] + by.along[1]}}; }
    friend bool operator==(const Size&, const Size&) = default;
};

struct Rectangle {
    Size corner;  // the one nearest to the origin
    Size size;

    bool overlaps(const Rectangle& o) const {
        const auto before = [](const Rectangle& a, const Rectangle& b, std::size_t axis) {
            return a.corner.along[axis] + a.size.along[axis] <= b.corner.along[axis];
        };
        return !before(*this, o, 0) && !before(o, *this, 0) && !before(*this, o, 1) && !before(o, *this, 1);
    }
    friend bool operator==(const Rectangle&, const Rectangle&) = default;
};

// The broad faces of a stock piece, as bits.
enum class Faces : std::uint8_t { none = 0, upper = 1, lower = 2, both = 3 };

inline constexpr Faces operator|(Faces a, Faces b) {
    return static_cast<Faces>(static_cast<std::uint8_t>(a) | static_cast<std::uint8_t>(b));
}

struct Defect {
    Rectangle area;
    Faces faces = Faces::both;
};

struct StockPiece {
    Size size;
    std::optional<int> available;  // nothing: as many as are asked for
    Amount cost = 1;               // of one piece; 1 each minimises their number
    std::vector<Defect> defects;   // a part lies on none, or on those of one face only: see PartKind

    bool has_defect_in(const Rectangle& area) const {
        return std::any_of(defects.begin(), defects.end(),
                           [&](const Defect& defect) { return defect.area.overlaps(area); });
    }
};

struct PartKind {
    Size size;
    int quantity = 1;
    bool may_turn = false;  // by 90 degrees
    bool one_face = false;  // one face without defects is enough, either of them
};

// Guillotine cuts go from edge to edge. A stage is a set of cuts that all divide the same axis, so stages
// alternate.
struct CutRule {
    std::optional<int> stages;       // nothing: any number
    std::optional<Axis> first_axis;  // the axis that the first stage divides; nothing: either
    bool trimming = true;            // one cut more, that only separates a part from waste, is not counted
    // What is cut can be held, both by the axis that is divided: a cut is at least so long across it, or one
    // of its sides is at least so large along it (0: no side helps). The second is also kept to where it
    // takes no more than another order of cuts.
    Size shortest_cut;
    Size least_held;

    // `run` from edge to edge; `side` is the larger one.
    bool lets_hold(Axis divided, int run, int side) const {
        return run >= shortest_cut[divided] || (least_held[divided] > 0 && side >= least_held[divided]);
    }
};

struct Problem {
    std::vector<StockPiece> stock;
    std::vector<PartKind> parts;
    Size kerf;  // what a cut takes away, by the axis that it divides: a rip and a crosscut saw may differ
    Size least_useful;  // a rectangle that is left counts from this size on, along each axis; 0: any
    CutRule rule;
};

// How much is tried. Counted in steps of the search, never in time, so the result is the same on every
// machine.
enum class Effort : std::uint8_t { quick, normal, deep };

}  // namespace rodwright::cutting
