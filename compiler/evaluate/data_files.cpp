#include "compiler/evaluate/data_files.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {

static FileId add_text(const std::string& name, ReadResult read, bool library, SourceManager& sources,
                       Diagnostics& diagnostics) {
    if (read.text) return sources.add(name, std::move(*read.text), library);
    diagnostics.add(diagnose(Code::cannot_read, {}, fmt::format("cannot read `{}`: {}", name, read.error)));
    return FileId::none;
}

std::optional<std::string> file_beside(const World& world, const std::string& design, std::string_view name) {
    const std::size_t slash = design.rfind('/');
    const std::string folder = slash == std::string::npos ? "" : design.substr(0, slash + 1);
    const std::vector<std::string> names =
        world.file_names(slash == std::string::npos ? "." : design.substr(0, slash));
    if (std::ranges::find(names, name) == names.end()) return std::nullopt;
    return folder + std::string(name);
}

FileId add_file(const World& world, const std::string& path, SourceManager& sources,
                Diagnostics& diagnostics) {
    return add_text(path, world.read(path), false, sources, diagnostics);
}

FileId add_file(const LibraryFiles& library, const std::string& path, SourceManager& sources,
                Diagnostics& diagnostics) {
    return add_text(library.shown(path), library.read(path), true, sources, diagnostics);
}

std::optional<Shop> shop_of(const World& world, const LibraryFiles& library, const std::string& design,
                            SourceManager& sources, Diagnostics& diagnostics) {
    const FileId file = add_file(library, "data/shop.yaml", sources, diagnostics);
    if (file == FileId::none) return std::nullopt;
    std::optional<Shop> shop = read_shop(sources, file, diagnostics);
    const std::optional<std::string> own = file_beside(world, design, "shop.yaml");
    if (!shop || !own) return shop;
    const FileId over = add_file(world, *own, sources, diagnostics);
    if (over == FileId::none) return std::nullopt;
    return overlay_shop(std::move(*shop), sources, over, diagnostics);
}

}  // namespace rodwright
