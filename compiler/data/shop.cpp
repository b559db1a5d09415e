#include "compiler/data/shop.hpp"

#include <algorithm>

#include "compiler/data/yaml_fields.hpp"

namespace rodwright {

const ShopTool* Shop::find(const std::string& name) const {
    const auto found = std::ranges::find(tools_, name, &ShopTool::name);
    return found == tools_.end() ? nullptr : &*found;
}

static bool sold_in(LengthUnit unit, const Rational& size) {
    const Rational steps = unit == LengthUnit::inch ? Rational(size * ratio(320, 127)) : Rational(size * 2);
    return steps.get_den() == 1;
}

// Those sold in the unit, or all of them if none is.
static std::vector<Rational> sizes_in(const ShopTool& tool, std::optional<LengthUnit> unit) {
    std::vector<Rational> sizes;
    for (const Rational& size : tool.sizes) {
        if (unit && sold_in(*unit, size)) sizes.push_back(size);
    }
    return sizes.empty() ? tool.sizes : sizes;
}

std::optional<Rational> Shop::nearest(const std::string& name, const Rational& millimetres,
                                      std::optional<LengthUnit> unit) const {
    const ShopTool* tool = find(name);
    if (tool == nullptr) return std::nullopt;
    const std::vector<Rational> sizes = sizes_in(*tool, unit);
    const auto distance = [&](const Rational& size) { return Rational(abs(size - millimetres)); };
    return *std::ranges::min_element(sizes, {}, distance);
}

std::optional<Rational> Shop::at_least(const std::string& name, const Rational& millimetres,
                                       LengthUnit unit) const {
    const ShopTool* tool = find(name);
    if (tool == nullptr) return std::nullopt;
    const std::vector<Rational> sizes = sizes_in(*tool, unit);
    const auto found = std::ranges::lower_bound(sizes, millimetres);
    return found == sizes.end() ? std::nullopt : std::optional(*found);
}

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

std::optional<Shop> read_shop(const SourceManager& sources, FileId file, Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"tools"}, diagnostics);
    const YamlNode* list = fields.map("tools");
    if (list == nullptr) return std::nullopt;
    std::vector<ShopTool> tools;
    bool ok = fields.ok();
    for (const YamlNode& node : list->children) {
        std::optional<ShopTool> tool = read_tool(node, diagnostics);
        ok = ok && tool.has_value();
        if (tool) tools.push_back(std::move(*tool));
    }
    if (!ok) return std::nullopt;
    return Shop(std::move(tools));
}

}  // namespace rodwright
