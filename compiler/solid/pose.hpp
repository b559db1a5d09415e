// Points and directions of a solid in the axes that it is placed in.
#pragma once

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

Point3 posed(const Pose& pose, const Point3& point);
Point3 turned(const Pose& pose, const Point3& direction);

}  // namespace rodwright
