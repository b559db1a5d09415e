// What a joint sheet shows of a joint: its members cut off near it.
#pragma once

#include <vector>

#include "backends/drawing/section.hpp"
#include "backends/packet/pictorials.hpp"

namespace rodwright::packet {

class JointViews {
  public:
    JointViews(const Context& context, const Joint& joint);

    // Seen from the side that the first member comes from. `apart`: that one drawn out along its way.
    Pictorial pictorial(bool apart, const drawing::Rect& room) const;
    // Through the joint's middle, square to the length or the thickness of where the members meet. Of a joint
    // larger than `most_across` x `most_up`, mm of the piece, the stretch in which most begins and ends.
    drawing::Section section(Direction along, double most_across, double most_up) const;
    const Joint& joint() const { return joint_; }
    // Where along an axis of the piece what is cut for this joint begins and ends, as far as a section meets
    // it, and where the members do within the section's window. Rising, each once.
    std::vector<Rational> marks(Direction section_along, Axis axis) const;

  private:
    void crop(Bounds& window, Direction section_along, Axis axis, double most) const;

    const Context& context_;
    const Joint& joint_;
    Point3 middle_{};
    Bounds window_;        // of the sections
    Bounds surroundings_;  // of the pictorials
    drawing::Cutting members_;
};

}  // namespace rodwright::packet
