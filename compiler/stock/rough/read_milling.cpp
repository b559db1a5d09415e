#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/rough/milling.hpp"
#include "compiler/stock/rough/value_reader.hpp"

namespace rodwright {
namespace {

void read_values(ValueReader& from, ThicknessClass& to) {
    from.length_above_zero("rough", to.rough);
    from.length_above_zero("surfaced", to.surfaced);
    if (from.names("dressed")) from.length_above_zero("dressed", to.dressed.emplace());
    if (from.names("usual")) from.flag("usual", to.usual);
    if (to.rough > 0 && to.surfaced > to.rough) {
        from.refuse("surfaced", "a surfaced board is not thicker than the rough one");
    }
}

void read_values(ValueReader& from, Allowances& to) {
    from.length("end", to.end);
    from.length("edge", to.edge);
    from.length("faces", to.faces);
    from.length("resawn_face", to.resawn_face);
    from.length("template_line", to.template_line);
    from.length("long_curve", to.long_curve);
    from.length("taper_band_saw", to.taper_band_saw);
    from.length("taper_table_saw", to.taper_table_saw);
    from.length("turning_length", to.turning_length);
    from.length("turning_width", to.turning_width);
}

void read_values(ValueReader& from, Jointer& to) {
    from.length("shortest", to.shortest);
    from.length("thinnest", to.thinnest);
    from.length_above_zero("widest", to.widest);
}

void read_values(ValueReader& from, Planer& to) {
    from.length("shortest", to.shortest);
    from.length("thinnest", to.thinnest);
    from.length_above_zero("widest", to.widest);
    from.flag("snipes", to.snipes);
    from.length("snipe", to.snipe);
}

void read_values(ValueReader& from, SawLimits& to) {
    from.length("shortest_rip", to.shortest_rip);
    from.length_above_zero("widest_rip", to.widest_rip);
    from.length_above_zero("longest_crosscut", to.longest_crosscut);
    from.length("shortest_mitre_saw", to.shortest_mitre_saw);
    from.length_above_zero("widest_mitre_saw", to.widest_mitre_saw);
    from.length_above_zero("tallest_resaw", to.tallest_resaw);
    from.length_above_zero("sheet_length", to.sheet_length);
    from.length_above_zero("sheet_width", to.sheet_width);
}

void read_values(ValueReader& from, PanelLimits& to) {
    from.length_above_zero("narrowest_stave", to.narrowest_stave);
    from.length_above_zero("widest_stave", to.widest_stave);
    from.length("glued_edge", to.glued_edge);
    from.length("length", to.length);
    from.length("width", to.width);
    if (to.narrowest_stave <= to.widest_stave) return;
    const bool widest = from.names("widest_stave");
    from.refuse(widest ? "widest_stave" : "narrowest_stave",
                "the widest stave is not narrower than the narrowest");
}

void read_values(ValueReader& from, OffcutLimits& to) {
    from.length("length", to.length);
    from.length("width", to.width);
    from.length("sheet_length", to.sheet_length);
    from.length("sheet_width", to.sheet_width);
}

// A word that has to be a key of `known`.
void read_name(ValueReader& from, std::string_view key, std::string& to,
               const std::map<std::string, Rational>& known, std::string_view section) {
    from.word(key, to);
    if (!from.names(key) || known.contains(to)) return;
    std::vector<std::string> names;
    for (const auto& [name, value] : known) names.push_back(name);
    const std::string nearest = nearest_name(to, std::move(names));
    from.refuse(key, fmt::format("`{}` is not one of `{}`", shortened(to), section),
                nearest.empty() ? "" : fmt::format("write `{}`", nearest));
}

void read_values(ValueReader& from, Buying& to) {
    if (auto grades = from.section("grades")) grades->every_share(to.grades);
    if (auto species = from.section("species")) species->every_share(to.species);
    read_name(from, "grade", to.grade, to.grades, "grades");
    from.share("sheets", to.sheets);
    from.length("sheet_trim", to.sheet_trim);
}

void read_saws(ValueReader& from, Saws& to, const std::map<std::string, Rational>& kerfs) {
    read_name(from, "rip", to.rip, kerfs, "kerfs");
    read_name(from, "crosscut", to.crosscut, kerfs, "kerfs");
    read_name(from, "resaw", to.resaw, kerfs, "kerfs");
    read_name(from, "sheets", to.sheets, kerfs, "kerfs");
    from.finish();
}

template <class Values>
void read_section(ValueReader& root, std::string_view key, Values& values) {
    if (auto section = root.section(key)) {
        read_values(*section, values);
        section->finish();
    }
}

void read_classes(ValueReader& from, std::vector<ThicknessClass>& classes, Diagnostics& diagnostics) {
    for (const YamlNode& node : from.entries()) {
        if (node.key.empty()) {
            diagnostics.add(diagnose(Code::bad_data, node.key_span, "a thickness class has a name"));
            continue;
        }
        auto known = std::ranges::find(classes, node.key, &ThicknessClass::name);
        const bool added = known == classes.end();
        ThicknessClass& each =
            added ? classes.emplace_back(ThicknessClass{node.key, {}, {}, {}, true}) : *known;
        ValueReader values = from.within(node, added ? Reading::complete : Reading::overlay);
        read_values(values, each);
        values.finish();
    }
    std::ranges::stable_sort(classes, {}, &ThicknessClass::rough);
}

void read_root(const YamlNode& node, Reading reading, MillingData& data, Diagnostics& diagnostics) {
    ValueReader root(node, reading, diagnostics);
    if (auto classes = root.section("thickness_classes")) read_classes(*classes, data.classes, diagnostics);
    read_section(root, "allowances", data.allowances);
    if (auto kerfs = root.section("kerfs")) kerfs->every_length(data.kerfs);
    if (auto saws = root.section("saws")) read_saws(*saws, data.saws, data.kerfs);
    read_section(root, "jointer", data.jointer);
    read_section(root, "planer", data.planer);
    read_section(root, "saw_limits", data.saw_limits);
    read_section(root, "panels", data.panels);
    read_section(root, "offcuts", data.offcuts);
    read_section(root, "buying", data.buying);
    root.finish();
}

std::optional<MillingData> read(MillingData data, Reading reading, const SourceManager& sources, FileId file,
                                Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    // Counted apart: the list that is handed in may be full already.
    Diagnostics found;
    read_root(*root, reading, data, found);
    for (const Diagnostic& each : found.list()) diagnostics.add(each);
    if (!found.ok()) return std::nullopt;
    return data;
}

}  // namespace

std::optional<MillingData> read_milling(const SourceManager& sources, FileId file, Diagnostics& diagnostics) {
    return read({}, Reading::complete, sources, file, diagnostics);
}

std::optional<MillingData> overlay_milling(MillingData base, const SourceManager& sources, FileId file,
                                           Diagnostics& diagnostics) {
    return read(std::move(base), Reading::overlay, sources, file, diagnostics);
}

}  // namespace rodwright
