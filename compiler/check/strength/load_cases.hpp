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

// The word of a use in the data: "shelf_books".
std::string use_word(const Use& use);

// The parts that carry what comes with a use: those that the design names, else the highest flat ones, or all
// of them where every one counts, as of shelves.
std::vector<PartId> carriers_of(const Piece& piece, const Use& use, const UseLoads& loads);

// `use` words that are not known, and uses for which the piece has no part, are reported and left out.
std::vector<Case> load_cases(const Piece& piece, const StrengthData& data, Diagnostics& diagnostics);

}  // namespace rodwright::strength
