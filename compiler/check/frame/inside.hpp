// Forces inside a beam.
#pragma once

#include "compiler/check/frame/solve.hpp"

namespace rodwright::frame {

// At `x` from the beam's start, on the face that looks along the beam, in its axes: force along x, y, z,
// moment about x, y, z. `per_length` is the uniform load on it, in its axes too. From the balance of what
// lies before.
inline Vec6 inside(const EndForces& ends, const Vec3& per_length, double x) {
    const Vec3 force = ends.start.head<3>();
    const Vec3 moment = ends.start.tail<3>();
    const Vec3 arm = Vec3::UnitX() * x;
    Vec6 result;
    result.head<3>() = -force - per_length * x;
    result.tail<3>() = -moment + arm.cross(force) + arm.cross(per_length) * x / 2;
    return result;
}

}  // namespace rodwright::frame
