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

// The smallest part that is held safely at a machine: one that is as long, or as wide.
struct SmallestHeld {
    Rational length;
    Rational width;
    std::string otherwise;  // how a smaller one is made
};

// What a machine takes; empty: no limit that matters.
struct Machine {
    std::string name;                // "table_saw"
    std::vector<std::string> holds;  // names of tools
    std::optional<Rational> widest;
    std::optional<Rational> tallest;
    std::optional<Rational> shortest;
    std::optional<Rational> under;  // the tallest part that goes under its cutter
    std::optional<SmallestHeld> smallest;
    std::map<std::string, Rational> most;  // what it can be set to at the most, by name of the setting
    std::optional<Rational> largest;       // diameter of the largest cutter
    std::optional<Rational> slowest;       // turns a minute
    std::optional<Rational> fastest;       // the same
};

// What is known of a cutter, as it turns.
struct CutterFacts {
    Rational times = 1;  // diameter = times * size + plus
    Rational plus = 0;
    std::map<Rational, Rational> reach;  // how deep it cuts, by size: this one and larger ones
    std::map<Rational, Rational> turns;  // a minute, at the most, by diameter: this one and smaller ones
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
    // How wide a cutter is as it turns; its size where nothing else is known.
    Rational diameter_of(const std::string& tool, const Rational& size) const;
    // How deep it cuts, empty where that is not known.
    std::optional<Rational> reach_of(const std::string& tool, const Rational& size) const;
    // How fast it may turn, empty where that is not known. Zero: it is wider than any that may turn.
    std::optional<Rational> most_turns(const std::string& tool, const Rational& size) const;
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
    std::map<std::string, CutterFacts> cutters_;
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
