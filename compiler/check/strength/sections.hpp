// Sections of all kinds of a piece, cut when they are asked for.
#pragma once

#include <map>

#include "compiler/assembly/blocking.hpp"
#include "compiler/check/strength/cross_section.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::strength {

class Sections {
  public:
    // `meshes` by part, in the piece's axes; may be empty. A kind without a surface is taken for its stock
    // box.
    Sections(const Piece& piece, const std::vector<Mesh>& meshes);

    // `x` along the grain from the kind's end; at the very ends, just inside.
    const CrossSection& at(KindId kind, double x);
    // Where pockets and the like are in the middle: there a part is likely weakest. Ascending.
    const std::vector<double>& pockets(KindId kind) const { return pockets_[static_cast<std::size_t>(kind)]; }

  private:
    const Piece& piece_;
    std::vector<Mesh> surfaces_;  // by kind, in its own frame
    std::vector<std::vector<double>> pockets_;
    std::map<std::pair<KindId, double>, CrossSection> known_;
};

}  // namespace rodwright::strength
