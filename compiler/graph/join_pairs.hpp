// Which parts a join line means. Private to compiler/graph/.
#pragma once

#include <array>
#include <vector>

#include "compiler/graph/contact.hpp"
#include "compiler/graph/draft.hpp"

namespace rodwright {

struct JoinPair {
    std::size_t first = 0;  // parts of the draft
    std::size_t second = 0;
    Contact contact;
    // Axes along which the first part is the image of the copy that the line is written for.
    std::array<bool, 3> mirrored{};
};

// Every copy of the first members with the copy of each second member that it touches. A hand that neither
// side gives is the one that touches; if several or none do, that is reported with the gap.
std::vector<JoinPair> join_pairs(Draft& draft, const JoinStatement& statement);

}  // namespace rodwright
