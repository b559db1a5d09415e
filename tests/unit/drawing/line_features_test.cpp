// Which feature a line of a part's view comes from, where that can be known.
#include "backends/packet/parts/line_features.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "backends/svg/views.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

Feature from_line(Feature feature, std::uint32_t begin) {
    feature.where = {FileId{0}, begin, begin + 1};
    return feature;
}

// 200 x 60 x 20 mm: a hole, a pocket, and a long edge that is rounded.
Kind part() {
    Kind kind = kind_of(200, 60, 20);
    kind.features = {
        from_line(body_feature(FeatureOp::remove,
                               cylinder_body({vector_of(40, 30, 20), plus_x, minus_y, minus_z}, 10, 20)),
                  1),
        from_line(body_feature(FeatureOp::remove,
                               box_body({vector_of(120, 30, 20), plus_x, minus_y, minus_z}, 50, 12, 8)),
                  2),
        from_line(edge_feature(FeatureOp::blend, {{Face::front, Face::top}}, 5), 3)};
    return kind;
}

// How many lines of a view come from each feature; those that come from none under -1.
std::map<int, int> lines_of(const Kind& kind, const drawing::AxisView& view) {
    const packet::LineFeatures features(kind, view);
    std::map<int, int> counts;
    for (const ViewLine& line : kernel().view({{build(kind), {}, 0}}, view.view(), true)) {
        const std::optional<std::size_t> feature = features.feature_of(line);
        ++counts[feature ? static_cast<int>(*feature) : -1];
    }
    return counts;
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("from above: the hole's circle, the pocket's four sides, where the rounding runs out") {
        std::map<int, int> counts = lines_of(part(), drawing::axis_view(plus_z, plus_y));
        CHECK(counts[0] == 1);
        CHECK(counts[1] == 4);
        CHECK(counts[2] == 1);
        CHECK(counts[-1] == 4);
    }

    TEST_CASE("from the end: the pocket's and the hole's hidden sides, the rounding's arc") {
        std::map<int, int> counts = lines_of(part(), drawing::axis_view(plus_x, plus_z));
        CHECK(counts[0] == 2);
        CHECK(counts[1] == 3);
        CHECK(counts[2] == 1);
    }

    TEST_CASE("a line that two features could have made is nobody's") {
        Kind kind = part();
        kind.features.pop_back();
        // A second pocket that goes on where the first ends: the side between them is gone, the others are in
        // line.
        kind.features.push_back(
            from_line(body_feature(FeatureOp::remove,
                                   box_body({vector_of(165, 30, 20), plus_x, minus_y, minus_z}, 40, 12, 8)),
                      4));
        std::map<int, int> counts = lines_of(kind, drawing::axis_view(plus_z, plus_y));
        CHECK(counts[1] == 1);
        CHECK(counts[2] == 1);
    }

    TEST_CASE("the SVG of a part has its lines in groups of the feature and the line of the design") {
        Making& making = made_example("keepers_table");
        const std::string text = example_text("keepers_table");
        making.sources.add("keepers_table.rod", text);
        const auto line_of = [&](const std::string& words) {
            const auto at = text.begin() + static_cast<std::ptrdiff_t>(text.find(words));
            return "keepers_table.rod:" + std::to_string(1 + std::count(text.begin(), at, '\n'));
        };
        const packet::Context context = making.context({});
        std::map<std::string, int> sources;
        for (const svg::SvgView& view : svg::views_of(context)) {
            if (view.file != "part-A1") continue;
            for (const drawing::Item& item : view.sheet.items) {
                const auto* group = std::get_if<drawing::GroupStart>(&item);
                if (group != nullptr) ++sources[group->name + " " + group->source];
            }
        }
        CHECK(sources["mortise and tenon " + line_of("join stretcher.front")] > 0);
        CHECK(sources["mortise and tenon " + line_of("join side_apron.front")] > 0);
        CHECK(sources["mortise and tenon " + line_of("join long_apron.left")] > 0);
    }
}
