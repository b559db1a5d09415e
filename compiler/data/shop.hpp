// The tools that a shop has, and in which sizes: stdlib/data/shop.yaml.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/quantity/format.hpp"
#include "compiler/quantity/rational.hpp"

namespace rodwright {

struct ShopTool {
    std::string name;             // "chisel"
    std::vector<Rational> sizes;  // millimetres, smallest first, none twice
};

class Shop {
  public:
    explicit Shop(std::vector<ShopTool> tools) : tools_(std::move(tools)) {}

    // The tool of that name, or null.
    const ShopTool* find(const std::string& name) const;
    // The size of that tool nearest to `millimetres`, of two as near the smaller; empty if there is no such
    // tool. With a unit, of the sizes that are sold in that unit (whole 1/64 in, or whole 1/2 mm) if the shop
    // has any: a piece in inches is not marked out for a 5 mm bit.
    std::optional<Rational> nearest(const std::string& name, const Rational& millimetres,
                                    std::optional<LengthUnit> unit = {}) const;
    // The smallest size of that tool that is `millimetres` or more, of those sold in the unit if the shop has
    // any; empty if all are smaller, or there is no such tool.
    std::optional<Rational> at_least(const std::string& name, const Rational& millimetres,
                                     LengthUnit unit) const;
    // As written in the file.
    const std::vector<ShopTool>& tools() const { return tools_; }

  private:
    std::vector<ShopTool> tools_;
};

// Empty, with Code::bad_data and the like in `diagnostics`, if the file is not as it should be.
std::optional<Shop> read_shop(const SourceManager& sources, FileId file, Diagnostics& diagnostics);

}  // namespace rodwright
