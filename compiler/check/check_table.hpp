// The checks: one table, one line each. A check reads the piece, its solids and what is shared between
// checks, and adds what it finds. It knows of no other check.
#pragma once

#include <string_view>
#include <vector>

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/assembly/shared_wood.hpp"
#include "compiler/check/findings.hpp"
#include "compiler/graph/piece.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

struct CheckInput {
    const Piece& piece;
    SolidStore& solids;
    // By part, where it is; empty for one that has no solid. Empty altogether where there are no solids.
    const std::vector<Mesh>& meshes;
    const std::vector<SharedWood>& shared;  // parts that are in one another
    const AssemblyFacts* facts = nullptr;   // null where there are no solids, or too many parts to try
};

struct Check {
    std::string_view name;      // "movement": stands in its numbers
    std::string_view summary;   // what it looks for
    std::vector<Code> codes;    // all that it may report
    bool needs_solids = false;  // it is passed over where a part has none: that is reported already
    void (*run)(const CheckInput& input, Findings& findings) = nullptr;
};

// In the order in which their numbers are printed.
const std::vector<Check>& all_checks();

}  // namespace rodwright
