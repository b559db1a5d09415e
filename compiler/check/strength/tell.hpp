// An assessment as findings and numbers.
#pragma once

#include "compiler/check/findings.hpp"
#include "compiler/check/strength/assess.hpp"

namespace rodwright::strength {

// One finding for parts that the design declares as one, and for joints of a kind: the worst of them.
void tell_findings(const Piece& piece, const Assessment& made, Diagnostics& diagnostics);
void tell_numbers(const Piece& piece, const Assessment& made, std::vector<Number>& numbers);

// Stands beside every result.
inline constexpr const char* disclaimer =
    "estimate; not a certified rating; local codes and a licensed engineer govern";

// The worst of each declared part that something acts on, in the order of the parts.
std::vector<PartResult> worst_parts(const Piece& piece, const Verdict& verdict);
// The worst of each kind of joint, in the order of the kinds.
std::vector<JointResult> worst_joints(const Piece& piece, const Verdict& verdict);
// The one that sags most for its span, of each declared part.
std::vector<ColumnResult> worst_columns(const Piece& piece, const Verdict& verdict);
std::vector<Sag> worst_sags(const Piece& piece, const Verdict& verdict);

// "`rail` in `leg` (mortise and tenon)"
std::string joint_words(const Piece& piece, std::size_t joint);

}  // namespace rodwright::strength
