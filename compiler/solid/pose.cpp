#include "compiler/solid/pose.hpp"

namespace rodwright {

Point3 turned(const Pose& pose, const Point3& direction) {
    Point3 out{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        for (std::size_t i = 0; i < 3; ++i) out[axis] += pose.columns[i][axis] * direction[i];
    }
    return out;
}

Point3 posed(const Pose& pose, const Point3& point) {
    Point3 out = turned(pose, point);
    for (std::size_t axis = 0; axis < 3; ++axis) out[axis] += pose.move[axis];
    return out;
}

}  // namespace rodwright
