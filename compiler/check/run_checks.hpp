// All checks of a piece.
#pragma once

#include <optional>

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/check/findings.hpp"
#include "compiler/graph/piece.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

// What the solids themselves have to say goes where `solids` reports, and if that is an error there is little
// to check; nothing is accepted yet.
Findings run_checks(const Piece& piece, SolidStore& solids);
// The same for who has looked already how the piece comes apart; `facts` as assembly_facts() gives them.
Findings run_checks(const Piece& piece, SolidStore& solids, const std::optional<AssemblyFacts>& facts);

// With what was said before the checks, all judged as the design asks.
Findings judged(Findings findings, const Diagnostics& said, const Piece& piece);

// The same diagnostics, with those marked that the design accepts. Only warnings and notes can be, and errors
// of the checks: no other error leaves a piece behind. Code::accepts_nothing for an `accept` that fits none
// of them. One that names parts fits what shows a line of theirs: the part's own, or where a finding shows no
// part's, that of a joint, a shape, a load or a use.
Diagnostics accepted(const Diagnostics& found, const Piece& piece);

}  // namespace rodwright
