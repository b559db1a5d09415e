// How much wood there is in a direction: rays through a part's surface, along the axes of the piece.
#pragma once

#include <optional>
#include <vector>

#include "compiler/assembly/blocking.hpp"

namespace rodwright {

// Rays one way through a part, from points that lie in `window` as seen along them. What does not show in the
// window is looked at once, not for every ray.
class Rays {
  public:
    Rays(const Mesh& mesh, Direction way, const Bounds& window);

    // From a point in the wood, how far it is to the surface that way, mm; empty where the point is not in
    // the wood. A ray along a face, through its very edge, may miss it: keep off the corners of what is
    // square.
    std::optional<double> wood_ahead(const Point3& from) const;

  private:
    Direction way_;
    std::vector<const Triangle*> shown_;
};

}  // namespace rodwright
