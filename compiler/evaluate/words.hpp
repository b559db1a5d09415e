// The words of the language that name faces, axes and hands.
#pragma once

#include <optional>
#include <string_view>

#include "compiler/geometry/geometry.hpp"

namespace rodwright {

std::optional<Face> face_from(std::string_view word);  // "left"
std::optional<Axis> axis_from(std::string_view word);  // "wide"

}  // namespace rodwright
