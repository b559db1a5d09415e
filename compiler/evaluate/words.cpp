#include "compiler/evaluate/words.hpp"

namespace rodwright {

std::optional<Face> face_from(std::string_view word) {
    for (const Face face : all_faces) {
        if (face_name(face) == word) return face;
    }
    return std::nullopt;
}

std::optional<Axis> axis_from(std::string_view word) {
    for (const Axis axis : all_axes) {
        if (axis_name(axis) == word) return axis;
    }
    return std::nullopt;
}

}  // namespace rodwright
