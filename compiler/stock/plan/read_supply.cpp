#include "compiler/stock/plan/read_supply.hpp"

#include "compiler/data/woods.hpp"
#include "compiler/evaluate/data_files.hpp"
#include "compiler/stock/rack/read_rack.hpp"

namespace rodwright {
SupplyFiles find_supply(const World& world, const std::string& design,
                        const std::optional<std::string>& rack) {
    return {rack ? rack : file_beside(world, design, "rack.yaml"),
            file_beside(world, design, "milling.yaml")};
}

std::optional<WoodSupply> read_supply(const World& world, const LibraryFiles& library,
                                      const SupplyFiles& files, SourceManager& sources,
                                      Diagnostics& diagnostics) {
    const FileId woods_file = add_file(library, "data/woods.yaml", sources, diagnostics);
    const FileId milling_file = add_file(library, "data/milling.yaml", sources, diagnostics);
    if (woods_file == FileId::none || milling_file == FileId::none) return std::nullopt;
    const std::optional<WoodTable> woods = read_woods(sources, woods_file, diagnostics);
    if (!woods) return std::nullopt;
    std::optional<MillingData> milling = read_milling(sources, milling_file, *woods, diagnostics);
    if (milling && files.milling) {
        const FileId over = add_file(world, *files.milling, sources, diagnostics);
        if (over == FileId::none) return std::nullopt;
        milling = overlay_milling(std::move(*milling), sources, over, *woods, diagnostics);
    }
    if (!milling) return std::nullopt;
    if (!files.rack) return WoodSupply{std::nullopt, std::move(*milling)};
    const FileId rack_file = add_file(world, *files.rack, sources, diagnostics);
    if (rack_file == FileId::none) return std::nullopt;
    std::optional<Rack> rack = read_rack(sources, rack_file, *woods, diagnostics);
    if (!rack) return std::nullopt;
    return WoodSupply{std::move(rack), std::move(*milling)};
}

}  // namespace rodwright
