#include <algorithm>

#include "compiler/data/shop.hpp"
#include "compiler/data/yaml_fields.hpp"

namespace rodwright {

static std::optional<ShopTool> read_tool(const YamlNode& node, Diagnostics& diagnostics) {
    if (!expect_kind(node, YamlKind::list, diagnostics)) return std::nullopt;
    ShopTool tool{node.key, {}};
    bool ok = true;
    for (const YamlNode& item : node.children) {
        const std::optional<Quantity> size = read_quantity(item, diagnostics);
        ok = ok && size.has_value();
        if (!size) continue;
        if (size->is_length() && size->value > 0) {
            tool.sizes.push_back(size->value);
            continue;
        }
        ok = false;
        diagnostics.add(diagnose(Code::bad_data, item.span, "a tool's size is a length above zero")
                            .hint("write the unit: `1/4 in` or `6mm`"));
    }
    if (node.children.empty()) {
        diagnostics.add(diagnose(Code::bad_data, node.key_span, "this tool has no sizes"));
        return std::nullopt;
    }
    std::ranges::sort(tool.sizes);
    tool.sizes.erase(std::unique(tool.sizes.begin(), tool.sizes.end()), tool.sizes.end());
    if (!ok) return std::nullopt;
    return tool;
}

static std::optional<Rational> length_of(const YamlNode& node, FieldReader& fields) {
    const std::optional<Quantity> size = read_quantity(node, fields.diagnostics());
    if (size && size->is_length() && size->value > 0) return size->value;
    if (size) fields.fault(node, "a length above zero is wanted", "write the unit: `12 in` or `300mm`");
    fields.spoil();
    return std::nullopt;
}

// A length above zero, or nothing where the key is not there.
static std::optional<Rational> optional_length(FieldReader& fields, std::string_view key) {
    const YamlNode* node = fields.optional_scalar(key);
    return node == nullptr ? std::nullopt : length_of(*node, fields);
}

static int small_number(FieldReader& fields, std::string_view key, int least, int most) {
    const Rational number = fields.number(key);
    if (!fields.ok()) return least;
    if (number.get_den() == 1 && number >= least && number <= most) return static_cast<int>(number.get_d());
    fields.fault(*fields.entry(key), "a whole number from " + std::to_string(least) + " to " +
                                         std::to_string(most) + " is wanted");
    return least;
}

// Reads what the file has into a shop, in place of what was there.
class ShopReader {
  public:
    ShopReader(const YamlNode& root, Shop& shop, Diagnostics& diagnostics)
        : fields_(root,
                  {"tools", "cutters", "turns", "machines", "fits", "instead", "clamps", "fitting", "workers",
                   "day"},
                  diagnostics),
          shop_(shop),
          diagnostics_(diagnostics) {}

    // Whether all of it was as it should be.
    bool read() {
        if (const YamlNode* tools = fields_.optional_map("tools")) read_tools(*tools);
        if (const YamlNode* cutters = fields_.optional_map("cutters")) read_cutters(*cutters);
        if (const YamlNode* turns = fields_.optional_list("turns")) read_turns(*turns);
        if (const YamlNode* machines = fields_.optional_map("machines")) read_machines(*machines);
        if (const YamlNode* fits = fields_.optional_map("fits")) read_fits(*fits);
        if (const YamlNode* instead = fields_.optional_map("instead")) read_instead(*instead);
        if (const YamlNode* clamps = fields_.optional_list("clamps")) read_clamps(*clamps);
        if (const YamlNode* fitting = fields_.optional_map("fitting")) read_fitting(*fitting);
        if (fields_.entry("workers") != nullptr) shop_.workers_ = small_number(fields_, "workers", 1, 2);
        if (const YamlNode* day = fields_.optional_scalar("day")) read_day(*day);
        return ok_ && fields_.ok();
    }

  private:
    void read_day(const YamlNode& node) {
        const std::optional<Quantity> day = read_quantity(node, diagnostics_);
        const bool is_time = day && day->dimension == Dimension::of(Base::time);
        if (is_time && day->value >= 3600 && day->value <= 86400) {
            shop_.day_ = day->value;
            return;
        }
        ok_ = false;
        if (day) fields_.fault(node, "from 1 h to 24 h are worked a day", "write the unit: `8 h`");
    }

    void read_tools(const YamlNode& map) {
        for (const YamlNode& node : map.children) {
            std::optional<ShopTool> tool = read_tool(node, diagnostics_);
            ok_ = ok_ && tool.has_value();
            if (!tool) continue;
            const auto known = std::ranges::find(shop_.tools_, tool->name, &ShopTool::name);
            if (known == shop_.tools_.end()) {
                shop_.tools_.push_back(std::move(*tool));
            } else {
                *known = std::move(*tool);
            }
        }
    }

    void read_machines(const YamlNode& map) {
        shop_.machines_.clear();
        for (const YamlNode& node : map.children) {
            FieldReader fields(node,
                               {"holds", "widest", "tallest", "shortest", "under", "smallest", "most",
                                "largest", "slowest", "fastest"},
                               diagnostics_);
            Machine machine;
            machine.name = node.key;
            if (const YamlNode* holds = fields.optional_list("holds")) machine.holds = words(*holds, fields);
            machine.widest = optional_length(fields, "widest");
            machine.tallest = optional_length(fields, "tallest");
            machine.shortest = optional_length(fields, "shortest");
            machine.under = optional_length(fields, "under");
            machine.largest = optional_length(fields, "largest");
            machine.slowest = fields.optional_number("slowest");
            machine.fastest = fields.optional_number("fastest");
            if (const YamlNode* most = fields.optional_map("most")) machine.most = read_most(*most);
            if (const YamlNode* smallest = fields.optional_map("smallest"))
                machine.smallest = read_smallest(*smallest);
            ok_ = ok_ && fields.ok();
            shop_.machines_.push_back(std::move(machine));
        }
    }

    std::map<std::string, Rational> read_most(const YamlNode& map) {
        std::map<std::string, Rational> most;
        for (const YamlNode& node : map.children) {
            if (const std::optional<Rational> length = length_of(node, fields_)) most[node.key] = *length;
        }
        return most;
    }

    std::optional<SmallestHeld> read_smallest(const YamlNode& node) {
        FieldReader fields(node, {"length", "width", "otherwise"}, diagnostics_);
        fields.require({"length", "width"});
        const std::optional<Rational> length = optional_length(fields, "length");
        const std::optional<Rational> width = optional_length(fields, "width");
        std::string otherwise = fields.text("otherwise");
        ok_ = ok_ && fields.ok();
        if (!length || !width) return std::nullopt;
        return SmallestHeld{*length, *width, std::move(otherwise)};
    }

    void read_cutters(const YamlNode& map) {
        for (const YamlNode& node : map.children) {
            FieldReader fields(node, {"times", "plus", "reach"}, diagnostics_);
            CutterFacts& facts = shop_.cutters_[node.key];
            if (const auto times = fields.optional_number("times")) facts.times = *times;
            if (const auto plus = optional_length(fields, "plus")) facts.plus = *plus;
            if (const YamlNode* reach = fields.optional_list("reach")) facts.reach = read_reach(*reach);
            ok_ = ok_ && fields.ok();
        }
    }

    std::map<Rational, Rational> read_reach(const YamlNode& list) {
        std::map<Rational, Rational> reach;
        for (const YamlNode& node : list.children) {
            FieldReader fields(node, {"from", "deep"}, diagnostics_);
            fields.require({"from", "deep"});
            const std::optional<Rational> from = optional_length(fields, "from");
            const std::optional<Rational> deep = optional_length(fields, "deep");
            ok_ = ok_ && fields.ok();
            if (from && deep) reach[*from] = *deep;
        }
        return reach;
    }

    void read_turns(const YamlNode& list) {
        for (const YamlNode& node : list.children) {
            FieldReader fields(node, {"cutters", "most"}, diagnostics_);
            const YamlNode* cutters = fields.list("cutters");
            const YamlNode* most = fields.list("most");
            ok_ = ok_ && fields.ok();
            if (cutters == nullptr || most == nullptr) continue;
            const std::map<Rational, Rational> turns = read_most_turns(*most);
            for (const std::string& tool : words(*cutters, fields)) shop_.cutters_[tool].turns = turns;
        }
    }

    std::map<Rational, Rational> read_most_turns(const YamlNode& list) {
        std::map<Rational, Rational> most;
        for (const YamlNode& node : list.children) {
            FieldReader fields(node, {"up_to", "turns"}, diagnostics_);
            fields.require({"up_to", "turns"});
            const std::optional<Rational> up_to = optional_length(fields, "up_to");
            const Rational turns = fields.number("turns");
            ok_ = ok_ && fields.ok();
            if (up_to) most[*up_to] = turns;
        }
        return most;
    }

    static std::vector<std::string> words(const YamlNode& list, FieldReader& fields) {
        std::vector<std::string> words;
        for (const YamlNode& node : list.children) {
            if (fields.expect(node, YamlKind::scalar)) words.push_back(node.text);
        }
        return words;
    }

    void read_fits(const YamlNode& map) {
        for (const YamlNode& node : map.children) {
            const bool smaller = node.text == "smaller";
            if (!smaller && node.text != "larger") fields_.fault(node, "`smaller` or `larger` is wanted");
            shop_.fits_[node.key] = smaller ? CutterFit::smaller : CutterFit::larger;
        }
    }

    void read_instead(const YamlNode& map) {
        for (const YamlNode& node : map.children) {
            if (!fields_.expect(node, YamlKind::list)) continue;
            std::vector<OtherWay>& ways = shop_.instead_[node.key];
            ways.clear();
            for (const YamlNode& entry : node.children) {
                FieldReader fields(entry, {"use", "text"}, diagnostics_);
                ways.push_back({fields.text("use"), fields.text("text")});
                ok_ = ok_ && fields.ok();
            }
        }
    }

    void read_clamps(const YamlNode& list) {
        shop_.clamps_.clear();
        for (const YamlNode& node : list.children) {
            FieldReader fields(node, {"length", "count"}, diagnostics_);
            fields.require({"length"});
            const std::optional<Rational> length = optional_length(fields, "length");
            const int count = small_number(fields, "count", 0, 1000);
            ok_ = ok_ && fields.ok();
            if (length) shop_.clamps_.push_back({*length, count});
        }
        std::ranges::sort(shop_.clamps_, {}, &ClampStock::length);
    }

    void read_fitting(const YamlNode& map) {
        FieldReader fields(map, {"length", "width", "thickness"}, diagnostics_);
        fields.require({"length", "width", "thickness"});
        shop_.fitting_.length = optional_length(fields, "length").value_or(0);
        shop_.fitting_.width = optional_length(fields, "width").value_or(0);
        shop_.fitting_.thickness = optional_length(fields, "thickness").value_or(0);
        ok_ = ok_ && fields.ok();
    }

    FieldReader fields_;
    Shop& shop_;
    Diagnostics& diagnostics_;
    bool ok_ = true;
};

std::optional<Shop> overlay_shop(Shop base, const SourceManager& sources, FileId file,
                                 Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root || !ShopReader(*root, base, diagnostics).read()) return std::nullopt;
    return base;
}

std::optional<Shop> read_shop(const SourceManager& sources, FileId file, Diagnostics& diagnostics) {
    std::optional<Shop> shop = overlay_shop({}, sources, file, diagnostics);
    if (!shop || !shop->tools().empty()) return shop;
    diagnostics.add(diagnose(Code::bad_data, {file, 0, 0}, "the shop has no `tools`"));
    return std::nullopt;
}

}  // namespace rodwright
