// Which part stands in the way of which, when one is drawn straight off along an axis of the piece.
//
// Whether a part is in another's way does not depend on the rest, so it is found once for every pair, for a
// way of any length (the directional blocking graphs of Wilson and Latombe, "Geometric reasoning about
// mechanical assembly", Artificial Intelligence 71, 1994).
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "compiler/geometry/geometry.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

// A top is lifted off before a side is drawn out.
inline constexpr std::array<Direction, 6> all_ways = {{{Axis::tall, true},
                                                       {Axis::tall, false},
                                                       {Axis::wide, true},
                                                       {Axis::wide, false},
                                                       {Axis::deep, true},
                                                       {Axis::deep, false}}};

// A part's surface, closed, in the piece's axes, mm.
using Mesh = std::vector<Triangle>;

class Blocking {
  public:
    // Parts are numbered as they stand in `parts`. Faces that slide on each other are in nobody's way; nor is
    // what overlaps by less than a thousandth of a millimetre.
    explicit Blocking(const std::vector<Mesh>& parts);

    std::size_t parts() const { return count_; }
    // Whether `mover`, drawn off that way, meets `other`. Parts that are in one another from the start meet
    // whichever way they go.
    bool meets(std::size_t mover, std::size_t other, Direction way) const {
        return upwards_[static_cast<std::size_t>(way.axis)][place(mover, other, way)];
    }
    // As if they did not meet.
    void open(std::size_t mover, std::size_t other, Direction way) { set(mover, other, way, false); }
    // As if they did: for what the surfaces do not show.
    void close(std::size_t mover, std::size_t other, Direction way) { set(mover, other, way, true); }

  private:
    void set(std::size_t mover, std::size_t other, Direction way, bool meets) {
        upwards_[static_cast<std::size_t>(way.axis)][place(mover, other, way)] = meets;
    }
    std::size_t place(std::size_t mover, std::size_t other, Direction way) const {
        return way.positive ? mover * count_ + other : other * count_ + mover;
    }

    std::size_t count_ = 0;
    // By axis: whether the first, going up the axis, meets the second. The same pair the other way round is
    // the second going down.
    std::array<std::vector<bool>, 3> upwards_;
};

}  // namespace rodwright
