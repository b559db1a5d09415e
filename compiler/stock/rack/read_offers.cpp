// What a dealer sells.
#include <fmt/format.h>
#include <algorithm>

#include "compiler/stock/rack/rack_fields.hpp"
#include "compiler/stock/rack/read_entries.hpp"

namespace rodwright {

static std::vector<Rational> thicknesses_of(FieldReader& fields) {
    const YamlNode* node = fields.entry("thickness");
    if (node == nullptr) return {};
    std::vector<Rational> thicknesses;
    const auto take = [&](const YamlNode& item) {
        if (const auto thickness = read_thickness(fields, item)) thicknesses.push_back(*thickness);
    };
    if (node->kind == YamlKind::list) {
        for (const YamlNode& item : node->children) take(item);
    } else {
        take(*node);
    }
    if (thicknesses.empty() && fields.ok()) {
        fields.fault(*node, "no thickness is sold here", "write those that are: `[4/4, 5/4, 8/4]`");
    }
    std::ranges::sort(thicknesses);
    thicknesses.erase(std::unique(thicknesses.begin(), thicknesses.end()), thicknesses.end());
    return thicknesses;
}

// From the least to the most.
static SizePair range_of(FieldReader& fields, std::string_view key, const SizeBounds& bounds) {
    const SizePair range = sizes_of(fields, key, bounds);
    if (range.first > range.second && range.second > 0) {
        fields.fault(*fields.entry(key), "these go from the larger to the smaller",
                     "write the smaller first: `5 in to 9 in`");
    }
    return range;
}

std::optional<LumberOffer> read_lumber_offer(const YamlNode& node, const WoodTable& woods,
                                             Diagnostics& diagnostics) {
    FieldReader fields(node, {"wood", "cut", "thickness", "width", "length", "price"}, diagnostics);
    fields.require({"wood", "thickness", "width", "length", "price"},
                   "as in `{wood: white_ash, thickness: [4/4, 8/4], width: 5 in to 9 in, length: 6 ft to 10 "
                   "ft, price: 6.40}`; the price is that of a board foot");
    if (node.kind != YamlKind::map) return std::nullopt;
    LumberOffer offer;
    offer.species = wood_of(fields, woods, false, "dealer: sheets");
    offer.cut = cut_of(fields);
    offer.thicknesses = thicknesses_of(fields);
    const SizePair widths = range_of(fields, "width", width_bounds);
    offer.narrowest = widths.first;
    offer.widest = widths.second;
    const SizePair lengths = range_of(fields, "length", length_bounds);
    offer.shortest = lengths.first;
    offer.longest = lengths.second;
    offer.price = price_of(fields).value_or(0);
    offer.where = node.span;
    if (!fields.ok()) return std::nullopt;
    return offer;
}

std::optional<SheetOffer> read_sheet_offer(const YamlNode& node, const WoodTable& woods,
                                           Diagnostics& diagnostics) {
    FieldReader fields(node, {"wood", "thickness", "length", "width", "grain", "price"}, diagnostics);
    fields.require(
        {"wood", "thickness", "length", "width", "price"},
        "as in `{wood: birch_plywood, thickness: 18mm, length: 2440mm, width: 1220mm, price: 60}`");
    if (node.kind != YamlKind::map) return std::nullopt;
    SheetOffer offer;
    offer.species = wood_of(fields, woods, true, "dealer: lumber");
    offer.thickness = thickness_of(fields);
    offer.length = size_of(fields, "length", length_bounds);
    offer.width = size_of(fields, "width", length_bounds);
    offer.grain = grain_of(fields);
    offer.price = price_of(fields).value_or(0);
    offer.where = node.span;
    if (!fields.ok()) return std::nullopt;
    return offer;
}

std::optional<DowelOffer> read_dowel_offer(const YamlNode& node, const WoodTable& woods,
                                           Diagnostics& diagnostics) {
    FieldReader fields(node, {"wood", "diameter", "length", "price"}, diagnostics);
    fields.require({"wood", "diameter", "length", "price"},
                   "as in `{wood: beech, diameter: 3/8 in, length: 36 in, price: 2}`");
    if (node.kind != YamlKind::map) return std::nullopt;
    DowelOffer offer;
    offer.species = wood_of(fields, woods, false, "dealer: sheets");
    if (const WoodSpecies* species = woods.find(offer.species)) offer.common = species->common;
    offer.diameter = size_of(fields, "diameter", thickness_bounds);
    offer.length = size_of(fields, "length", length_bounds);
    offer.price = price_of(fields).value_or(0);
    offer.where = node.span;
    if (!fields.ok()) return std::nullopt;
    return offer;
}

}  // namespace rodwright
