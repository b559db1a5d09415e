#include "compiler/evaluate/statements.hpp"

namespace rodwright {

std::size_t PartDeclaration::copies() const {
    std::size_t result = 1;
    for (const bool axis : handed) result *= axis ? 2 : 1;
    return result;
}

namespace {

Linear unknown(Unknown first, Face face) {
    const auto id = static_cast<std::uint32_t>(first) + static_cast<std::uint32_t>(face);
    return {0, {{Unknown{id}, 1}}};
}

}  // namespace

Linear Statements::face(const Container& container, Face face) const {
    if (container.parent == nullptr && !is_far(face)) return {};
    return unknown(container.first, face);
}

Linear Statements::face(std::size_t instance, Face wanted) const {
    const Instance& copy = instances[instance];
    if (copy.hands[static_cast<std::size_t>(axis_of(wanted))] != 1)
        return unknown(instances[copy.master].first, wanted);
    // The image in the container's middle plane: near + far - what lies opposite.
    const Container& container = *declarations[copy.declaration].container;
    return face(container, wanted) + face(container, opposite(wanted)) -
           unknown(instances[copy.master].first, opposite(wanted));
}

}  // namespace rodwright
