// What a piece has to carry: the loads of its design, and those that come with what it is used as.
#pragma once

#include <string>
#include <vector>

#include "compiler/check/strength/structure.hpp"

namespace rodwright::strength {

struct PointForce {
    PartPoint on;
    Vec3 force = Vec3::Zero();  // N, in the piece's axes
};

// Downwards, all along a part, N for each mm of its length.
struct SpreadForce {
    PartId part{};
    double per_length = 0;
};

struct Case {
    std::string name;    // "table: a weight in the middle"
    std::string source;  // of the load
    bool lasting = false;
    bool sag = false;   // whether sag under it counts: not under the loads of strength tests, which go again
    bool push = false;  // sideways: how far it sways counts
    std::vector<PointForce> forces;
    std::vector<SpreadForce> spread;
    std::vector<PartId> carriers;  // the parts that carry it first
    Span where;
};

// `use` words that are not known, and uses for which the piece has no part, are reported and left out.
std::vector<Case> load_cases(const Piece& piece, const StrengthData& data, Diagnostics& diagnostics);

}  // namespace rodwright::strength
