#include "compiler/assembly/locks.hpp"

#include <algorithm>

namespace rodwright {

namespace {

PartNumbers without(PartNumbers parts, std::size_t gone) {
    std::erase(parts, gone);
    return parts;
}

bool stand_in_one_another(const PartNumbers& locked, const std::vector<SharedWood>& shared) {
    return std::ranges::any_of(shared, [&](const SharedWood& pair) {
        return std::ranges::binary_search(locked, pair.a) && std::ranges::binary_search(locked, pair.b);
    });
}

}  // namespace

PartNumbers smallest_lock(const Blocking& blocking, const PartNumbers& locked) {
    PartNumbers left = locked;
    for (const std::size_t part : locked) {
        if (!std::ranges::binary_search(left, part)) continue;
        const TakenApart apart = take_apart(blocking, without(left, part));
        if (!apart.locked.empty()) left = apart.locked.front();
    }
    return left;
}

std::vector<PartNumbers> locks_of(const AssemblyFacts& facts, const std::vector<SharedWood>& shared) {
    std::vector<PartNumbers> locks;
    for (const PartNumbers& locked : facts.apart.locked) {
        if (!stand_in_one_another(locked, shared)) locks.push_back(smallest_lock(facts.blocking, locked));
    }
    return locks;
}

std::vector<Opening> openings(const Piece& piece) {
    std::vector<Opening> found;
    for (std::size_t i = 0; i < piece.joints.size(); ++i) {
        const Joint& joint = piece.joints[i];
        // What closes straight onto the other part, as a tenon does, does not go through it.
        const bool slides_across = joint.slides && joint.slides->axis != joint.frame.w.axis;
        if (!slides_across || joint.members.size() != 2) continue;
        const auto goes = static_cast<std::size_t>(joint.members[0].part);
        const auto stays = static_cast<std::size_t>(joint.members[1].part);
        found.push_back({goes, stays, -*joint.slides, i});
        found.push_back({goes, stays, *joint.slides, i});
    }
    return found;
}

std::vector<Opening> releases(const Blocking& blocking, const PartNumbers& locked,
                              const std::vector<Opening>& openings) {
    std::vector<Opening> found;
    for (const Opening& opening : openings) {
        if (!std::ranges::binary_search(locked, opening.goes) ||
            !std::ranges::binary_search(locked, opening.stays) ||
            !blocking.meets(opening.goes, opening.stays, opening.way)) {
            continue;
        }
        Blocking opened = blocking;
        opened.open(opening.goes, opening.stays, opening.way);
        if (take_apart(opened, locked).locked.empty()) found.push_back(opening);
    }
    return found;
}

}  // namespace rodwright
