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

std::optional<WoodTable> read_woods(const SourceManager& sources, FileId file, Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"woods"}, diagnostics);
    const YamlNode* list = fields.map("woods");
    if (list == nullptr) return std::nullopt;
    std::vector<WoodSpecies> woods;
    bool ok = fields.ok();
    for (const YamlNode& node : list->children) {
        std::optional<WoodSpecies> species = read_species(node, diagnostics);
        ok = ok && species.has_value();
        if (species) woods.push_back(std::move(*species));
    }
    if (!ok) return std::nullopt;
    return WoodTable(std::move(woods));
}

}  // namespace rodwright
