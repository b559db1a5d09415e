#include "compiler/cli/wood_arguments.hpp"

#include "compiler/cli/command.hpp"

namespace rodwright {
namespace {

cutting::Effort effort_of(const std::string& word) {
    if (word == "quick") return cutting::Effort::quick;
    return word == "deep" ? cutting::Effort::deep : cutting::Effort::normal;
}

}  // namespace

void add_wood_options(CLI::App& command, WoodArguments& arguments) {
    command.add_option("--rack", arguments.rack, "What wood there is (rack.yaml beside the design)")
        ->type_name("FILE");
    command
        .add_option(
            "--effort", arguments.effort,
            "How long to look for the best cutting plan; `normal` is a second at most for most pieces")
        ->type_name("quick|normal|deep")
        ->check(one_of({"quick", "normal", "deep"}));
}

std::optional<PlannedDesign> plan_design(const DesignArguments& design, const WoodArguments& arguments,
                                         const Piece& piece, SourceManager& sources,
                                         Diagnostics& diagnostics) {
    const DiskWorld world;
    SupplyFiles files = find_supply(world, design.file, if_given(arguments.rack));
    const LibraryFiles library(world, if_given(design.stdlib_folder));
    std::optional<WoodSupply> supply = read_supply(world, library, files, sources, diagnostics);
    if (!supply) return std::nullopt;
    WoodPlan plan = plan_wood(piece, *supply, effort_of(arguments.effort), diagnostics);
    return PlannedDesign{std::move(files), std::move(*supply), std::move(plan)};
}

}  // namespace rodwright
