// Lines by which a part says how large it is: `wide = 1-3/4"`, `deep = wide`.
#pragma once

#include <map>
#include <vector>

#include "compiler/evaluate/statements.hpp"

namespace rodwright {

class OwnSizes {
  public:
    explicit OwnSizes(Statements& statements);

    // The part's size along the axis is `size`, instead of what its line says. No such line: nothing changes.
    void replace(std::size_t instance, Axis axis, const Rational& size, Span where);

  private:
    Statements& statements_;
    std::map<std::size_t, std::vector<std::size_t>> lines_;  // equations by instance
};

}  // namespace rodwright
