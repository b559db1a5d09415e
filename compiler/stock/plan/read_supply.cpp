#include "compiler/stock/plan/read_supply.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/data/woods.hpp"
#include "compiler/stock/rack/read_rack.hpp"

namespace rodwright {
namespace {

std::string folder_of(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    return slash == std::string::npos ? std::string{} : path.substr(0, slash + 1);
}

FileId add(const std::string& name, ReadResult read, bool library, SourceManager& sources,
           Diagnostics& diagnostics) {
    if (read.text) return sources.add(name, std::move(*read.text), library);
    diagnostics.add(diagnose(Code::cannot_read, {}, fmt::format("cannot read `{}`: {}", name, read.error)));
    return FileId::none;
}

}  // namespace

SupplyFiles find_supply(const World& world, const std::string& design,
                        const std::optional<std::string>& rack) {
    const std::string folder = folder_of(design);
    const std::vector<std::string> names =
        world.file_names(folder.empty() ? "." : folder.substr(0, folder.size() - 1));
    const auto beside = [&](const std::string& name) -> std::optional<std::string> {
        if (std::ranges::find(names, name) == names.end()) return std::nullopt;
        return folder + name;
    };
    return {rack ? rack : beside("rack.yaml"), beside("milling.yaml")};
}

std::optional<WoodSupply> read_supply(const World& world, const LibraryFiles& library,
                                      const SupplyFiles& files, SourceManager& sources,
                                      Diagnostics& diagnostics) {
    const auto own = [&](const std::string& path) {
        return add(path, world.read(path), false, sources, diagnostics);
    };
    const auto of_library = [&](const std::string& path) {
        return add(library.shown(path), library.read(path), true, sources, diagnostics);
    };
    const FileId woods_file = of_library("data/woods.yaml");
    const FileId milling_file = of_library("data/milling.yaml");
    if (woods_file == FileId::none || milling_file == FileId::none) return std::nullopt;
    const std::optional<WoodTable> woods = read_woods(sources, woods_file, diagnostics);
    if (!woods) return std::nullopt;
    std::optional<MillingData> milling = read_milling(sources, milling_file, *woods, diagnostics);
    if (milling && files.milling) {
        const FileId over = own(*files.milling);
        if (over == FileId::none) return std::nullopt;
        milling = overlay_milling(std::move(*milling), sources, over, *woods, diagnostics);
    }
    if (!milling) return std::nullopt;
    if (!files.rack) return WoodSupply{std::nullopt, std::move(*milling)};
    const FileId rack_file = own(*files.rack);
    if (rack_file == FileId::none) return std::nullopt;
    std::optional<Rack> rack = read_rack(sources, rack_file, *woods, diagnostics);
    if (!rack) return std::nullopt;
    return WoodSupply{std::move(rack), std::move(*milling)};
}

}  // namespace rodwright
