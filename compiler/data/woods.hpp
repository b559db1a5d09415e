// The woods of stdlib/data/woods.yaml, and what wood_ways.yaml knows of them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/data/wood_mechanics.hpp"
#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/quantity/rational.hpp"

namespace rodwright {

struct WoodSpecies {
    std::string key;                   // "white_ash", as a design writes it
    std::string common;                // "white ash"
    Rational density;                  // kg/m^3 at 12 % moisture
    std::string colour;                // "#d9c39a", for drawings
    std::optional<Rational> hardness;  // side hardness, N
    bool sheet = false;                // plywood and the like
    std::string source;                // the mark explained at the head of the file
    // Change in size for each percent of moisture, as a part of the size; 0 where it is not known, and for
    // sheets.
    Rational radial = 0;
    Rational tangential = 0;
    std::string caution = {};  // about its dust; may be empty
    std::optional<WoodMechanics> mechanics = {};
};

class WoodTable {
  public:
    explicit WoodTable(std::vector<WoodSpecies> species);

    // The species of that key, or null.
    const WoodSpecies* find(const std::string& key) const;
    // Sorted by key.
    const std::vector<WoodSpecies>& all() const { return species_; }
    std::vector<std::string> keys() const;
    // The same for who fills it in.
    WoodSpecies* find(const std::string& key);

  private:
    std::vector<WoodSpecies> species_;
};

// What a maker is told who writes a wood that is not there.
Diagnostic no_such_wood(const std::string& name, Span where, const WoodTable& woods);

// Empty, with Code::bad_data and the like in `diagnostics`, if the file is not as it should be.
std::optional<WoodTable> read_woods(const SourceManager& sources, FileId file, Diagnostics& diagnostics);
// How much woods move and what their dust does, put into `woods`. False, and reported, if the file is not as
// it should be.
bool read_wood_ways(const SourceManager& sources, FileId file, WoodTable& woods, Diagnostics& diagnostics);

}  // namespace rodwright
