#include <functional>

#include "compiler/data/woods.hpp"
#include "compiler/data/yaml_fields.hpp"

namespace rodwright {

namespace {

using ReadWay = std::function<void(FieldReader&, WoodSpecies&)>;

// Every entry of a map from woods to what is known of them.
bool read_list(const YamlNode& list, std::initializer_list<std::string_view> fields, const ReadWay& read,
               WoodTable& woods, Diagnostics& diagnostics) {
    bool ok = true;
    for (const YamlNode& node : list.children) {
        WoodSpecies* species = woods.find(node.key);
        if (species == nullptr) {
            diagnostics.add(no_such_wood(node.key, node.key_span, woods));
            ok = false;
            continue;
        }
        FieldReader reader(node, fields, diagnostics);
        read(reader, *species);
        ok = ok && reader.ok();
    }
    return ok;
}

void read_movement(FieldReader& fields, WoodSpecies& species) {
    species.radial = fields.number("radial");
    species.tangential = fields.number("tangential");
    fields.text("source");
    const Rational most = ratio(1, 100);  // a tenth of the size from dry to wet: no wood does
    for (const char* key : {"radial", "tangential"}) {
        const Rational& value = key[0] == 'r' ? species.radial : species.tangential;
        if (fields.ok() && (value <= 0 || value > most))
            fields.fault(*fields.entry(key),
                         "a change in size for each percent of moisture is above 0, and small",
                         "as in `radial: 0.00169`");
    }
}

void read_caution(FieldReader& fields, WoodSpecies& species) {
    species.caution = fields.text("caution");
    fields.text("source");
}

}  // namespace

bool read_wood_ways(const SourceManager& sources, FileId file, WoodTable& woods, Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return false;
    FieldReader fields(*root, {"movement", "cautions"}, diagnostics);
    const YamlNode* movement = fields.map("movement");
    const YamlNode* cautions = fields.map("cautions");
    if (movement == nullptr || cautions == nullptr || !fields.ok()) return false;
    const bool moves =
        read_list(*movement, {"radial", "tangential", "source"}, read_movement, woods, diagnostics);
    return read_list(*cautions, {"caution", "source"}, read_caution, woods, diagnostics) && moves;
}

}  // namespace rodwright
