#include "tests/support/wood.hpp"

#include <fmt/format.h>

namespace rodwright::testing {
namespace {

std::string report_of(const Diagnostics& diagnostics) {
    std::string text;
    for (const Diagnostic& diagnostic : diagnostics.list())
        text += fmt::format("{} {}\n", info(diagnostic.code).code, diagnostic.message);
    return text;
}

}  // namespace

const PlannedBoard& PlannedWood::board(const std::string& name) const {
    for (const PlannedBoard& each : plan.boards) {
        if (each.name == name) return each;
    }
    FAIL("no board " << name << " is cut");
    return plan.boards.front();
}

std::vector<PlanArea> PlannedWood::places(const std::string& label) const {
    std::vector<PlanArea> found;
    for (const PlannedBoard& each : plan.boards) {
        for (const PlanRegion& region : each.regions) {
            if (region.piece && each.pieces[*region.piece].label == label) found.push_back(region.area);
        }
    }
    return found;
}

PlannedWood plan_from(const Piece& piece, const std::string& rack, const std::string& milling,
                      cutting::Effort effort) {
    Files files = {{"rack.yaml", rack}};
    if (!milling.empty()) files["milling.yaml"] = milling;
    const MemoryWorld world(files);
    SourceManager sources;
    Diagnostics diagnostics;
    const SupplyFiles names{"rack.yaml",
                            milling.empty() ? std::nullopt : std::optional<std::string>("milling.yaml")};
    std::optional<WoodSupply> supply =
        read_supply(world, LibraryFiles(world, std::nullopt), names, sources, diagnostics);
    REQUIRE_MESSAGE(supply, report_of(diagnostics));
    WoodPlan plan = plan_wood(piece, *supply, effort, diagnostics);
    return {std::move(*supply), std::move(plan), report_of(diagnostics)};
}

}  // namespace rodwright::testing
