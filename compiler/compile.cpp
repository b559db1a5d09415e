#include "compiler/compile.hpp"

#include <fmt/format.h>

#include "compiler/data/shop.hpp"
#include "compiler/data/woods.hpp"
#include "compiler/evaluate/instantiate.hpp"
#include "compiler/graph/build.hpp"
#include "compiler/place/place.hpp"

namespace rodwright {

namespace {

struct ShopData {
    std::optional<WoodTable> woods;
    std::optional<Shop> shop;
};

FileId add_data(const LibraryFiles& library, const std::string& path, Compilation& compilation) {
    ReadResult read = library.read(path);
    if (!read.text) {
        compilation.diagnostics.add(
            diagnose(Code::cannot_read, {},
                     fmt::format("cannot read `{}` of the library: {}", library.shown(path), read.error)));
        return FileId::none;
    }
    return compilation.sources->add(library.shown(path), std::move(*read.text), true);
}

ShopData read_data(const LibraryFiles& library, Compilation& compilation) {
    ShopData data;
    const FileId woods = add_data(library, "data/woods.yaml", compilation);
    const FileId ways = add_data(library, "data/wood_ways.yaml", compilation);
    const FileId shop = add_data(library, "data/shop.yaml", compilation);
    if (woods == FileId::none || ways == FileId::none || shop == FileId::none) return data;
    data.woods = read_woods(*compilation.sources, woods, compilation.diagnostics);
    if (data.woods && !read_wood_ways(*compilation.sources, ways, *data.woods, compilation.diagnostics))
        data.woods.reset();
    data.shop = read_shop(*compilation.sources, shop, compilation.diagnostics);
    return data;
}

// The unit that the piece is written for; inches if it does not say.
LengthUnit unit_of(const Syntax& piece) {
    const std::vector<Syntax> units = piece.find(NodeKind::block).all(NodeKind::unit);
    return !units.empty() && units.back().child(0).text() == "mm" ? LengthUnit::millimetre : LengthUnit::inch;
}

// How many parts fit into rows that leave it open: the piece is placed once without laying those rows out.
RowCounts fitted_counts(Design& design, const DesignOptions& options, const NearestTool& nearest,
                        Diagnostics& diagnostics) {
    Diagnostics unseen;  // whatever is wrong is found again, and reported, in the second pass
    Evaluator evaluator(unseen, nearest);
    const std::unique_ptr<Statements> statements = instantiate(design, evaluator, options, {});
    const Places places = place(*statements, unseen);
    Evaluator counting(diagnostics, nearest);
    counting.settle(&places.values);
    return count_fitted_rows(*statements, counting);
}

}  // namespace

Compilation compile(const World& world, const CompileOptions& options) {
    Compilation compilation;
    compilation.sources = std::make_unique<SourceManager>();
    Diagnostics& diagnostics = compilation.diagnostics;
    const LibraryFiles library(world, options.stdlib_folder);
    Design design(world, library, *compilation.sources, diagnostics);
    design.load(options.path);
    const ShopData data = read_data(library, compilation);
    if (!design.piece() || !data.woods || !data.shop) return compilation;

    const LengthUnit unit = unit_of(design.piece());
    const NearestTool nearest = [&](std::string_view tool, const Rational& size) {
        return data.shop->nearest(std::string(tool), size, unit);
    };
    const DesignOptions design_options{options.settings, options.variant};
    Evaluator evaluator(diagnostics, nearest);
    const RowCounts counts =
        design.has_fitted_rows() ? fitted_counts(design, design_options, nearest, diagnostics) : RowCounts();
    const std::unique_ptr<Statements> statements = instantiate(design, evaluator, design_options, counts);
    const Places places = place(*statements, diagnostics);
    evaluator.settle(&places.values);
    check_assumptions(*statements, evaluator);
    check_requirements(*statements, evaluator);
    check_unused(*statements, evaluator);
    compilation.piece = build_piece(*statements, places, *data.woods, design, evaluator);
    return compilation;
}

}  // namespace rodwright
