// What the design says is made and done already.
#include <algorithm>

#include "compiler/graph/draft.hpp"

namespace rodwright {

namespace {

// The one step after which a part is still a place on a board.
constexpr std::string_view before_all_cuts = "choose_boards";

void mark_made(const std::vector<PartId>& parts, Piece& piece) {
    for (const PartId part : parts) piece.parts[static_cast<std::size_t>(part)].made = true;
}

// What was measured is shown as it was measured, down to what a rule is read to.
void refine_step(const MadeSize& made, LengthStyle& style) {
    const Rational finest = style.unit == LengthUnit::inch ? ratio(1, 64) : ratio(1, 10);
    for (const std::optional<Rational>& size : made.size) {
        if (size && !show_length(*size, style).exact) style.step = std::min(style.step, finest);
    }
}

}  // namespace

void add_as_built(const Statements& statements, Piece& piece) {
    for (const MadeStatement& made : statements.made) {
        piece.made.push_back({parts_of(statements, {made.part}), made.size, made.where});
        mark_made(piece.made.back().parts, piece);
        refine_step(piece.made.back(), piece.style);
    }
    for (const DoneStatement& done : statements.done) {
        piece.done.push_back({done.work, done.step, parts_of(statements, done.on), done.where});
        if (done.step != before_all_cuts && !done.on.empty()) mark_made(piece.done.back().parts, piece);
    }
}

}  // namespace rodwright
