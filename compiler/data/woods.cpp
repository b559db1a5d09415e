#include "compiler/data/woods.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/data/yaml_fields.hpp"

namespace rodwright {

WoodTable::WoodTable(std::vector<WoodSpecies> species) : species_(std::move(species)) {
    std::ranges::sort(species_, {}, &WoodSpecies::key);
}

const WoodSpecies* WoodTable::find(const std::string& key) const {
    const auto found = std::ranges::lower_bound(species_, key, {}, &WoodSpecies::key);
    return found == species_.end() || found->key != key ? nullptr : &*found;
}

WoodSpecies* WoodTable::find(const std::string& key) {
    const auto found = std::ranges::lower_bound(species_, key, {}, &WoodSpecies::key);
    return found == species_.end() || found->key != key ? nullptr : &*found;
}

std::vector<std::string> WoodTable::keys() const {
    std::vector<std::string> keys;
    for (const WoodSpecies& species : species_) keys.push_back(species.key);
    return keys;
}

Diagnostic no_such_wood(const std::string& name, Span where, const WoodTable& woods) {
    const std::string near = nearest_name(name, woods.keys());
    return diagnose(Code::unknown_wood, where, fmt::format("there is no wood `{}`", shortened(name)))
        .hint(near.empty() ? "`rodwright list woods` lists them" : fmt::format("did you mean `{}`?", near));
}

static bool is_colour(const std::string& text) {
    return text.size() == 7 && text[0] == '#' &&
           text.find_first_not_of("0123456789abcdef", 1) == std::string::npos;
}

static bool is_word(const std::string& text) {
    return !text.empty() &&
           text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string::npos &&
           text[0] >= 'a' && text[0] <= 'z';
}

static std::optional<WoodSpecies> read_species(const YamlNode& node, Diagnostics& diagnostics) {
    if (!is_word(node.key)) {
        diagnostics.add(diagnose(Code::bad_data, node.key_span,
                                 fmt::format("`{}` cannot be a wood's name in a design", shortened(node.key)))
                            .hint("small letters, digits and `_`, a letter first"));
        return std::nullopt;
    }
    FieldReader fields(node, {"common", "density", "colour", "hardness", "sheet", "source"}, diagnostics);
    WoodSpecies species{node.key,
                        fields.text("common"),
                        fields.number("density"),
                        fields.text("colour"),
                        fields.optional_number("hardness"),
                        fields.flag("sheet"),
                        fields.text("source")};
    if (!fields.ok()) return std::nullopt;
    if (!is_colour(species.colour)) {
        diagnostics.add(
            diagnose(Code::bad_data, find_entry(node, "colour")->span,
                     "a colour is written as `\"#d9c39a\"`: red, green, blue in small hex digits"));
        return std::nullopt;
    }
    if (species.density <= 0) {
        diagnostics.add(
            diagnose(Code::bad_data, find_entry(node, "density")->span, "a wood weighs something"));
        return std::nullopt;
    }
    return species;
}

// What the table of elastic ratios has for the species, else its mean and the handbook's rule for G.
static bool read_ratios(FieldReader& fields, WoodMechanics& mechanics) {
    mechanics.across = 0.083;
    mechanics.shear_modulus = 1.0 / 16;
    const YamlNode* list = fields.optional_list("ratios");
    if (list == nullptr) return fields.ok();
    std::vector<double> ratios;
    for (const YamlNode& node : list->children) {
        const std::optional<Quantity> value = read_quantity(node, fields.diagnostics());
        if (value && value->is_number() && value->value > 0) ratios.push_back(value->to_double());
    }
    if (ratios.size() != 4 || list->children.size() != 4) {
        fields.fault(*list, "the ratios are four plain numbers above zero: E_T, E_R, G_LR, G_LT over E_L");
        return false;
    }
    mechanics.across = (ratios[0] + ratios[1]) / 2;
    mechanics.shear_modulus = (ratios[2] + ratios[3]) / 2;
    return true;
}

// Of a species in `woods`; reports one that is not there.
static bool read_mechanics(const YamlNode& node, std::vector<WoodSpecies>& woods, Diagnostics& diagnostics) {
    FieldReader fields(node, {"modulus", "rupture", "crushing", "shear", "ratios", "source"}, diagnostics);
    WoodMechanics mechanics;
    mechanics.modulus = fields.number("modulus").get_d();
    mechanics.rupture = fields.number("rupture").get_d();
    mechanics.crushing = fields.number("crushing").get_d();
    mechanics.shear = fields.number("shear").get_d();
    fields.text("source");
    if (!fields.ok() || !read_ratios(fields, mechanics)) return false;
    const auto species = std::ranges::find(woods, node.key, &WoodSpecies::key);
    if (species == woods.end()) {
        fields.fault(node, fmt::format("there is no wood `{}` above", shortened(node.key)));
        return false;
    }
    if (std::min({mechanics.modulus, mechanics.rupture, mechanics.crushing, mechanics.shear}) <= 0) {
        fields.fault(node, "stiffness and strengths are above zero");
        return false;
    }
    mechanics.gravity = species->density.get_d() / 1120;  // density at 12 % = 1120 x gravity, equation 4-14
    species->mechanics = mechanics;
    return true;
}

std::optional<WoodTable> read_woods(const SourceManager& sources, FileId file, Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"woods", "mechanics"}, diagnostics);
    const YamlNode* list = fields.map("woods");
    if (list == nullptr) return std::nullopt;
    std::vector<WoodSpecies> woods;
    bool ok = fields.ok();
    for (const YamlNode& node : list->children) {
        std::optional<WoodSpecies> species = read_species(node, diagnostics);
        ok = ok && species.has_value();
        if (species) woods.push_back(std::move(*species));
    }
    const YamlNode* mechanics = ok ? fields.optional_map("mechanics") : nullptr;
    if (mechanics != nullptr) {
        for (const YamlNode& node : mechanics->children) ok = read_mechanics(node, woods, diagnostics) && ok;
    }
    if (!ok || !fields.ok()) return std::nullopt;
    return WoodTable(std::move(woods));
}

}  // namespace rodwright
