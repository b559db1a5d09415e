#include "compiler/check/strength/strength_data.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "compiler/data/embedded.hpp"
#include "compiler/data/yaml_fields.hpp"

namespace rodwright::strength {

namespace {

// A number of the named dimension, as in `1000 N`; 0 where it is not there.
double force_or_none(FieldReader& fields, std::string_view key) {
    const YamlNode* node = fields.optional_scalar(key);
    if (node == nullptr) return 0;
    const std::optional<Quantity> value = read_quantity(*node, fields.diagnostics());
    if (!value) {
        fields.spoil();
    } else if (value->dimension != Dimension::of(Base::force) || value->value <= 0) {
        fields.fault(*node, "a load is a force above zero", "as in `1000 N`");
    } else {
        return value->to_double();
    }
    return 0;
}

template <typename Value, std::size_t Count>
Value word_of(FieldReader& fields, std::string_view key,
              const std::array<std::pair<std::string_view, Value>, Count>& words) {
    const YamlNode* node = fields.optional_scalar(key);
    if (node == nullptr) return words.front().second;
    const auto found = std::ranges::find(words, node->text, &std::pair<std::string_view, Value>::first);
    if (found != words.end()) return found->second;
    std::vector<std::string_view> known;
    for (const auto& [word, value] : words) known.push_back(word);
    fields.fault(*node, "no such word", "one of " + quoted_words(known));
    return words.front().second;
}

constexpr std::array<std::pair<std::string_view, LoadPlace>, 4> places = {{{"middle", LoadPlace::middle},
                                                                           {"edge", LoadPlace::edge},
                                                                           {"end", LoadPlace::end},
                                                                           {"spread", LoadPlace::spread}}};
constexpr std::array<std::pair<std::string_view, Axis>, 2> ways = {
    {{"wide", Axis::wide}, {"deep", Axis::deep}}};

std::optional<UseCase> read_case(const YamlNode& node, Diagnostics& diagnostics) {
    FieldReader fields(
        node,
        {"name", "down", "every_metre", "every_square_metre", "push", "along", "at", "lasting", "source"},
        diagnostics);
    UseCase made;
    made.name = fields.text("name");
    made.down = force_or_none(fields, "down");
    made.every_metre = force_or_none(fields, "every_metre");
    made.every_square_metre = force_or_none(fields, "every_square_metre");
    made.push = force_or_none(fields, "push");
    made.along = word_of(fields, "along", ways);
    made.at = word_of(fields, "at", places);
    made.lasting = fields.flag("lasting");
    made.source = fields.text("source");
    if (fields.ok() && made.down + made.every_metre + made.every_square_metre + made.push <= 0) {
        fields.fault(node, "this case has no load",
                     "write `down`, `every_metre`, `every_square_metre` or `push`");
    }
    if (!fields.ok()) return std::nullopt;
    return made;
}

std::optional<UseLoads> read_use(const YamlNode& node, Diagnostics& diagnostics) {
    FieldReader fields(node, {"word", "every", "cases"}, diagnostics);
    UseLoads use{fields.text("word"), fields.flag("every"), {}};
    const YamlNode* cases = fields.list("cases");
    if (cases == nullptr) return std::nullopt;
    for (const YamlNode& entry : cases->children) {
        std::optional<UseCase> made = read_case(entry, diagnostics);
        if (!made) return std::nullopt;
        use.cases.push_back(std::move(*made));
    }
    if (!fields.ok()) return std::nullopt;
    return use;
}

std::optional<Rules> read_rules(const YamlNode& node, Diagnostics& diagnostics) {
    FieldReader fields(
        node,
        {"safety", "lasting", "creep", "sag_span", "sag_finer", "post_length", "column_curve", "sway_height",
         "end_grain", "end_grain_stiffness", "friction", "dowel_bond", "dowel_shear", "dowel_modulus",
         "screw_slip", "end_grain_screw", "side_slip", "side_reserve"},
        diagnostics);
    const auto above_zero = [&](std::string_view key) {
        const Rational value = fields.number(key);
        if (fields.ok() && value <= 0) fields.fault(*fields.entry(key), "this is above zero");
        return value.get_d();
    };
    Rules rules;
    rules.safety = above_zero("safety");
    rules.lasting = above_zero("lasting");
    rules.creep = above_zero("creep");
    rules.sag_span = above_zero("sag_span");
    rules.sag_finer = above_zero("sag_finer");
    rules.post_length = above_zero("post_length");
    rules.column_curve = above_zero("column_curve");
    rules.sway_height = above_zero("sway_height");
    rules.end_grain = above_zero("end_grain");
    rules.end_grain_stiffness = above_zero("end_grain_stiffness");
    rules.friction = above_zero("friction");
    rules.dowel_bond = above_zero("dowel_bond");
    rules.dowel_shear = above_zero("dowel_shear");
    rules.dowel_modulus = above_zero("dowel_modulus");
    rules.screw_slip = above_zero("screw_slip");
    rules.end_grain_screw = above_zero("end_grain_screw");
    rules.side_slip = above_zero("side_slip");
    rules.side_reserve = above_zero("side_reserve");
    if (!fields.ok()) return std::nullopt;
    return rules;
}

StrengthData built_in() {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = add_embedded("data/loads.yaml", sources);
    if (auto data = read_strength_data(sources, file, diagnostics)) return std::move(*data);
    throw std::logic_error("data/loads.yaml of the library cannot be read");
}

}  // namespace

const UseLoads* StrengthData::find(const std::string& word) const {
    const auto found = std::ranges::find(uses, word, &UseLoads::word);
    return found == uses.end() ? nullptr : &*found;
}

std::optional<StrengthData> read_strength_data(const SourceManager& sources, FileId file,
                                               Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"uses", "rules"}, diagnostics);
    const YamlNode* uses = fields.list("uses");
    const YamlNode* rules = fields.map("rules");
    if (uses == nullptr || rules == nullptr || !fields.ok()) return std::nullopt;
    StrengthData data;
    for (const YamlNode& node : uses->children) {
        std::optional<UseLoads> use = read_use(node, diagnostics);
        if (!use) return std::nullopt;
        data.uses.push_back(std::move(*use));
    }
    std::optional<Rules> read = read_rules(*rules, diagnostics);
    if (!read) return std::nullopt;
    data.rules = *read;
    return data;
}

const StrengthData& strength_data() {
    static const StrengthData data = built_in();
    return data;
}

}  // namespace rodwright::strength
