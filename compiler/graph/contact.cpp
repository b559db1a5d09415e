#include "compiler/graph/contact.hpp"

#include <algorithm>

namespace rodwright {

namespace {

std::optional<Contact> contact(const Box& first, const Box& second, Face face) {
    const Face other = opposite(face);
    if (first.at(face) != second.at(other)) return std::nullopt;
    Contact result{face, other, {}};
    for (const Axis axis : all_axes) {
        if (axis == axis_of(face)) {
            result.rectangle.low[axis] = result.rectangle.high[axis] = first.at(face);
            continue;
        }
        result.rectangle.low[axis] = std::max(first.low[axis], second.low[axis]);
        result.rectangle.high[axis] = std::min(first.high[axis], second.high[axis]);
        if (result.rectangle.size(axis) <= 0) return std::nullopt;
    }
    return result;
}

}  // namespace

std::vector<Contact> contacts(const Box& first, const Box& second, std::optional<Face> first_face,
                              std::optional<Face> second_face) {
    std::vector<Contact> result;
    for (const Face face : all_faces) {
        if (first_face && *first_face != face) continue;
        if (second_face && *second_face != opposite(face)) continue;
        if (auto found = contact(first, second, face)) result.push_back(std::move(*found));
    }
    return result;
}

Gap gap_between(const Box& first, const Box& second) {
    std::optional<Gap> widest;
    for (const Axis axis : all_axes) {
        const Rational gap = std::max(Rational(second.low[axis] - first.high[axis]),
                                      Rational(first.low[axis] - second.high[axis]));
        if (!widest || gap > widest->amount) widest = Gap{axis, gap};
    }
    return *widest;
}

Gap gap_between(const Box& first, Face face, const Box& second) {
    const Axis axis = axis_of(face);
    const Rational gap = is_far(face) ? Rational(second.low[axis] - first.high[axis])
                                      : Rational(first.low[axis] - second.high[axis]);
    const Gap widest = gap_between(first, second);
    // In one plane and beside each other: what separates them is not along the face's axis.
    return gap == 0 || (widest.axis != axis && widest.amount >= 0 && gap < 0) ? widest : Gap{axis, gap};
}

}  // namespace rodwright
