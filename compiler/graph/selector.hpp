// Which faces and edges of a part a selector means: `long edges`, `inside faces`, `top front edge`, `left
// end`. Private to compiler/graph/.
#pragma once

#include <optional>
#include <vector>

#include "compiler/graph/draft.hpp"

namespace rodwright {

struct Selection {
    std::vector<Face> faces;     // of a selector of faces or ends
    std::vector<BoxEdge> edges;  // of a selector of edges
};

// Words before the last narrow the choice: `long` (along the grain), `end` (of the ends), `inside` and
// `outside` (towards the middle of the envelope, away from it), names of faces (an edge must lie on all that
// are named). Empty, and reported, if a word is unknown or nothing is left.
std::optional<Selection> select(const Syntax& selector, const DraftPart& part, const Box& envelope,
                                Evaluator& evaluator);

}  // namespace rodwright
