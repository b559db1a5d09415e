// The words of the command line that say what wood there is.
#pragma once

#include <CLI/App.hpp>
#include <optional>
#include <string>

#include "compiler/cli/design_arguments.hpp"
#include "compiler/stock/plan/read_supply.hpp"

namespace rodwright {

struct WoodArguments {
    std::string rack;  // empty: rack.yaml beside the design, if there is one
    std::string effort = "normal";
};

void add_wood_options(CLI::App& command, WoodArguments& arguments);

struct PlannedDesign {
    SupplyFiles files;
    WoodSupply supply;
    WoodPlan plan;  // rough sizes alone where there is no rack
};

// The wood of the piece planned. Empty where a file is not as it should be; the reason is in `diagnostics`.
std::optional<PlannedDesign> plan_design(const DesignArguments& design, const WoodArguments& arguments,
                                         const Piece& piece, SourceManager& sources,
                                         Diagnostics& diagnostics);

}  // namespace rodwright
