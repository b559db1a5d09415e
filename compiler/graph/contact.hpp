// Where two parts meet.
#pragma once

#include <optional>
#include <vector>

#include "compiler/geometry/geometry.hpp"

namespace rodwright {

// Faces in one plane, looking at each other, with a common rectangle of some area. The box is that rectangle:
// its size across the plane is zero.
struct Contact {
    Face first{};
    Face second{};
    Box rectangle;
};

// Through the given face of the first, or through any.
std::vector<Contact> contacts(const Box& first, const Box& second, std::optional<Face> first_face,
                              std::optional<Face> second_face);

// How far apart two boxes are, along the axis where they are farthest; negative if they run into each other.
struct Gap {
    Axis axis{};
    Rational amount;
};
Gap gap_between(const Box& first, const Box& second);

// How far a face is from the one that it should meet, where the faces are given.
Gap gap_between(const Box& first, Face first_face, const Box& second);

}  // namespace rodwright
