// The files that say what wood there is and how it is milled.
#pragma once

#include "compiler/evaluate/design.hpp"
#include "compiler/stock/plan/plan_wood.hpp"

namespace rodwright {

struct SupplyFiles {
    std::optional<std::string> rack;
    std::optional<std::string> milling;  // the maker's own, laid over the library's
};

// `rack.yaml` and `milling.yaml` beside the design, if they are there; another rack where `rack` is given.
SupplyFiles find_supply(const World& world, const std::string& design,
                        const std::optional<std::string>& rack);

// Empty, with the reason reported, if one of the files cannot be read or is not as it should be.
std::optional<WoodSupply> read_supply(const World& world, const LibraryFiles& library,
                                      const SupplyFiles& files, SourceManager& sources,
                                      Diagnostics& diagnostics);

}  // namespace rodwright
