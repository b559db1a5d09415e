// What a shop has: tools and their sizes, machines and what they take, clamps, hands. stdlib/data/shop.yaml,
// and the maker's own `shop.yaml` laid over it.
//
// Lengths are millimetres, exact.
#pragma once

#include <cstdint>
#include <map>
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

// What a machine takes; empty: no limit that matters.
struct Machine {
    std::string name;                // "table_saw"
    std::vector<std::string> holds;  // names of tools
    std::optional<Rational> widest;
    std::optional<Rational> tallest;
    std::optional<Rational> shortest;
};

// Another way to the work of a machine that is not there.
struct OtherWay {
    std::string use;  // name of a machine, or "hand"
    std::string text;
};

struct ClampStock {
    Rational length;
    int count = 0;
};

// By how much a part is cut over the drawing, where a size is taken from the work.
struct FittingOver {
    Rational length;
    Rational width;
    Rational thickness;
};

// Which other size of a cutter does the work: one in several passes, or with part of a larger one's edge.
enum class CutterFit : std::uint8_t { exact, smaller, larger };

class Shop {
  public:
    Shop() = default;
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
    // The size with which a cut of that size is made: the size itself, else as `fits` has it the next smaller
    // or larger one, of those sold in the unit if the shop has any. Empty if none does, or there is no such
    // tool.
    std::optional<Rational> cutter_for(const std::string& name, const Rational& millimetres,
                                       LengthUnit unit) const;
    // The machine of that name, or null.
    const Machine* machine(const std::string& name) const;
    // Nearest first; none for a machine that nothing is known of.
    const std::vector<OtherWay>& instead_of(const std::string& name) const;

    // As written in the file.
    const std::vector<ShopTool>& tools() const { return tools_; }
    const std::vector<ClampStock>& clamps() const { return clamps_; }  // shortest first; none: not known
    const FittingOver& fitting() const { return fitting_; }
    int workers() const { return workers_; }      // 1 or 2
    const Rational& day() const { return day_; }  // worked, seconds: from 1 h to 24 h

  private:
    friend class ShopReader;

    std::vector<ShopTool> tools_;
    std::vector<Machine> machines_;
    std::map<std::string, CutterFit> fits_;
    std::map<std::string, std::vector<OtherWay>> instead_;
    std::vector<ClampStock> clamps_;
    FittingOver fitting_;
    int workers_ = 1;
    Rational day_ = 8 * 3600;
};

// Empty, with Code::bad_data and the like in `diagnostics`, if the file is not as it should be.
std::optional<Shop> read_shop(const SourceManager& sources, FileId file, Diagnostics& diagnostics);

// `base` with what the maker's file has in place of its own: a tool's sizes, all machines, all clamps, the
// hands. Empty as above.
std::optional<Shop> overlay_shop(Shop base, const SourceManager& sources, FileId file,
                                 Diagnostics& diagnostics);

}  // namespace rodwright
