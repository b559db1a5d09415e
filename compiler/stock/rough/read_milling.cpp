#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>
#include <utility>

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

// Lengths that are read by their keys.
template <class Values>
using Lengths = std::initializer_list<std::pair<std::string_view, Rational Values::*>>;

template <class Values>
void read_lengths(ValueReader& from, Values& to, Lengths<Values> lengths) {
    for (const auto& [key, value] : lengths) from.length(key, to.*value);
}

template <class Values>
void read_lengths_above_zero(ValueReader& from, Values& to, Lengths<Values> lengths) {
    for (const auto& [key, value] : lengths) from.length_above_zero(key, to.*value);
}

void read_values(ValueReader& from, Allowances& to) {
    read_lengths(from, to,
                 {{"end", &Allowances::end},
                  {"edge", &Allowances::edge},
                  {"faces", &Allowances::faces},
                  {"resawn_face", &Allowances::resawn_face},
                  {"template_line", &Allowances::template_line},
                  {"long_curve", &Allowances::long_curve},
                  {"taper_band_saw", &Allowances::taper_band_saw},
                  {"taper_table_saw", &Allowances::taper_table_saw},
                  {"turning_length", &Allowances::turning_length},
                  {"turning_width", &Allowances::turning_width}});
}

void read_values(ValueReader& from, Jointer& to) {
    read_lengths(from, to, {{"shortest", &Jointer::shortest}, {"thinnest", &Jointer::thinnest}});
    from.length_above_zero("widest", to.widest);
}

void read_values(ValueReader& from, Planer& to) {
    read_values(from, static_cast<Jointer&>(to));
    from.flag("snipes", to.snipes);
    from.length("snipe", to.snipe);
}

void read_values(ValueReader& from, SawLimits& to) {
    read_lengths(from, to,
                 {{"shortest_rip", &SawLimits::shortest_rip},
                  {"narrowest_rip", &SawLimits::narrowest_rip},
                  {"shortest_mitre_saw", &SawLimits::shortest_mitre_saw}});
    read_lengths_above_zero(from, to,
                            {{"widest_rip", &SawLimits::widest_rip},
                             {"longest_crosscut", &SawLimits::longest_crosscut},
                             {"widest_mitre_saw", &SawLimits::widest_mitre_saw},
                             {"tallest_resaw", &SawLimits::tallest_resaw},
                             {"sheet_length", &SawLimits::sheet_length},
                             {"sheet_width", &SawLimits::sheet_width}});
}

void read_values(ValueReader& from, PanelLimits& to) {
    read_lengths_above_zero(
        from, to,
        {{"narrowest_stave", &PanelLimits::narrowest_stave}, {"widest_stave", &PanelLimits::widest_stave}});
    read_lengths(from, to,
                 {{"glued_edge", &PanelLimits::glued_edge},
                  {"length", &PanelLimits::length},
                  {"width", &PanelLimits::width}});
    if (to.narrowest_stave <= to.widest_stave) return;
    const bool widest = from.names("widest_stave");
    from.refuse(widest ? "widest_stave" : "narrowest_stave",
                "the widest stave is not narrower than the narrowest");
}

void read_values(ValueReader& from, OffcutLimits& to) {
    read_lengths(from, to,
                 {{"length", &OffcutLimits::length},
                  {"width", &OffcutLimits::width},
                  {"sheet_length", &OffcutLimits::sheet_length},
                  {"sheet_width", &OffcutLimits::sheet_width}});
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

// What else a wood needs: the keys are woods.
void read_species(ValueReader& from, std::map<std::string, Rational>& to, const WoodTable& woods,
                  Diagnostics& diagnostics) {
    for (const YamlNode& node : from.entries()) {
        if (woods.find(node.key) == nullptr) diagnostics.add(no_such_wood(node.key, node.key_span, woods));
    }
    from.every_share(to);
}

void read_buying(ValueReader& from, Buying& to, const WoodTable& woods, Diagnostics& diagnostics) {
    if (auto grades = from.section("grades")) grades->every_share(to.grades);
    if (auto species = from.section("species")) read_species(*species, to.species, woods, diagnostics);
    read_name(from, "grade", to.grade, to.grades, "grades");
    from.length("sheet_trim", to.sheet_trim);
    from.finish();
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

void read_root(const YamlNode& node, Reading reading, const WoodTable& woods, MillingData& data,
               Diagnostics& diagnostics) {
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
    if (auto buying = root.section("buying")) read_buying(*buying, data.buying, woods, diagnostics);
    root.finish();
}

std::optional<MillingData> read(MillingData data, Reading reading, const SourceManager& sources, FileId file,
                                const WoodTable& woods, Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    // Counted apart: the list that is handed in may be full already.
    Diagnostics found;
    read_root(*root, reading, woods, data, found);
    for (const Diagnostic& each : found.list()) diagnostics.add(each);
    if (!found.ok()) return std::nullopt;
    return data;
}

}  // namespace

std::optional<MillingData> read_milling(const SourceManager& sources, FileId file, const WoodTable& woods,
                                        Diagnostics& diagnostics) {
    return read({}, Reading::complete, sources, file, woods, diagnostics);
}

std::optional<MillingData> overlay_milling(MillingData base, const SourceManager& sources, FileId file,
                                           const WoodTable& woods, Diagnostics& diagnostics) {
    return read(std::move(base), Reading::overlay, sources, file, woods, diagnostics);
}

}  // namespace rodwright
