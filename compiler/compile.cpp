#include "compiler/compile.hpp"

#include <fmt/format.h>

#include "compiler/data/woods.hpp"
#include "compiler/evaluate/data_files.hpp"
#include "compiler/evaluate/instantiate.hpp"
#include "compiler/graph/build.hpp"
#include "compiler/place/place.hpp"

namespace rodwright {

namespace {

struct ShopData {
    std::optional<WoodTable> woods;
    std::optional<Shop> shop;
};

ShopData read_data(const World& world, const LibraryFiles& library, const std::string& design,
                   Compilation& compilation) {
    SourceManager& sources = *compilation.sources;
    Diagnostics& diagnostics = compilation.diagnostics;
    ShopData data;
    const FileId woods = add_file(library, "data/woods.yaml", sources, diagnostics);
    const FileId ways = add_file(library, "data/wood_ways.yaml", sources, diagnostics);
    if (woods == FileId::none || ways == FileId::none) return data;
    data.woods = read_woods(sources, woods, diagnostics);
    if (data.woods && !read_wood_ways(sources, ways, *data.woods, diagnostics)) data.woods.reset();
    data.shop = shop_of(world, library, design, sources, diagnostics);
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
    const ShopData data = read_data(world, library, options.path, compilation);
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
    compilation.piece = build_piece(*statements, places, *data.woods, *data.shop, design, evaluator);
    return compilation;
}

}  // namespace rodwright
