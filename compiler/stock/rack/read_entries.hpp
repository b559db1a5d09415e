// The entries of a rack's file, one kind a function. Internal to compiler/stock/rack.
//
// Each is empty, with all that is wrong with the entry in `diagnostics`, if the entry cannot be used.
#pragma once

#include <optional>

#include "compiler/data/woods.hpp"
#include "compiler/data/yaml_fields.hpp"
#include "compiler/stock/rack/rack.hpp"

namespace rodwright {

std::optional<RackBoard> read_board(const YamlNode& node, bool offcut, const WoodTable& woods,
                                    Diagnostics& diagnostics);
std::optional<RackSheet> read_sheet(const YamlNode& node, const WoodTable& woods, Diagnostics& diagnostics);
std::optional<LumberOffer> read_lumber_offer(const YamlNode& node, const WoodTable& woods,
                                             Diagnostics& diagnostics);
std::optional<SheetOffer> read_sheet_offer(const YamlNode& node, const WoodTable& woods,
                                           Diagnostics& diagnostics);
std::optional<DowelOffer> read_dowel_offer(const YamlNode& node, const WoodTable& woods,
                                           Diagnostics& diagnostics);

// `length`, `width` or `none`; along the length if it is not there.
FaceGrain grain_of(FieldReader& fields);

// The field `defects`, each of them within that length and width; what is wrong is reported by `fields`.
std::vector<WoodDefect> defects_of(FieldReader& fields, const Rational& length, const Rational& width);

}  // namespace rodwright
