// Notes at leaders: where they find room, and what part sheets say with them.
#include "backends/drawing/leader.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "backends/packet/parts/feature_leaders.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "tests/support/sample_piece.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/sheet_check.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::drawing;
using namespace rodwright::testing;

namespace {

Feature named(Feature feature, const std::string& made_by) {
    feature.made_by = made_by;
    return feature;
}

Feature hole(const Rational& x, const Rational& y, const Rational& diameter, const Rational& depth) {
    const Rational top = inches(3, 4);
    return named(
        body_feature(FeatureOp::remove,
                     cylinder_body({vector_of(x, y, top), plus_x, minus_y, minus_z}, diameter, depth)),
        "bore");
}

// How often a text stands on a sheet.
std::ptrdiff_t count(const Sheet& sheet, const std::string& wanted) {
    return std::count_if(sheet.items.begin(), sheet.items.end(), [&](const Item& item) {
        const auto* text = std::get_if<Text>(&item);
        return text != nullptr && text->text == wanted;
    });
}

// The sheet of a kind of the sample with these features and no others.
Sheet sheet_with(KindId kind, std::vector<Feature> features) {
    Piece piece = sample_piece();
    piece.kinds[static_cast<std::size_t>(kind)].features = std::move(features);
    Making making(std::move(piece));
    const packet::Context context = making.context({{"sheet", "letter"}});
    const std::vector<packet::Draft> drafts = packet::part_sheets(context, kind);
    CHECK(faults_of(drafts.front().sheet, *making.fonts).empty());
    return drafts.front().sheet;
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("a note stands on nothing that is drawn, and its line crosses no text") {
        Diagnostics diagnostics;
        const std::optional<Fonts> fonts = Fonts::load(diagnostics);
        REQUIRE(fonts.has_value());
        Sheet sheet;
        sheet.frame = {0, 0, 100, 60};
        sheet.text({"what is there", FontFace::regular, 2.5, {52, 33}, Align::left, false});
        sheet.line(LineRole::visible, {0, 20}, {100, 20});
        const std::vector<LeaderTip> tips = {{{50, 30}, leader_ways()}};
        REQUIRE(draw_leader(sheet, {"note", tips}, sheet.frame, *fonts));
        CHECK(count(sheet, "note") == 1);
        CHECK(faults_of(sheet, *fonts).empty());
        // Between the line and a roof there is no room for it, nor in a room that ends beside the tip.
        Sheet roofed;
        roofed.line(LineRole::visible, {0, 29}, {100, 29});
        roofed.line(LineRole::visible, {0, 31}, {100, 31});
        CHECK(!draw_leader(roofed, {"note", tips}, {0, 28, 100, 32}, *fonts));
        CHECK(roofed.items.size() == 2);
        CHECK(!draw_leader(roofed, {"note", tips}, {48, 0, 52, 60}, *fonts));
    }

    TEST_CASE("holes have their diameter and depth at a circle, those alike once") {
        // The top is 30 x 12 x 3/4 in.
        const Sheet sheet = sheet_with(KindId{3}, {hole(inches(4), inches(3), inches(1, 4), inches(3, 4)),
                                                   hole(inches(9), inches(3), inches(1, 4), inches(3, 4)),
                                                   hole(inches(20), inches(8), inches(3, 8), inches(1, 2))});
        CHECK(count(sheet, "2 × ⌀ 1/4\" through") == 1);
        CHECK(count(sheet, "⌀ 3/8\", 1/2\" deep") == 1);
    }

    TEST_CASE("a leader says of a taper what no dimension says") {
        // 1 1/2 in square, 23 in from its end on tapered to 1 1/8 in there.
        Piece piece = sample_piece();
        piece.kinds[0].features[0].body.profile = {{0, 0}, {inches(23), 0}, {0, inches(3, 8)}};
        Making making(std::move(piece));
        const packet::Context context = making.context({});
        const Kind& leg = context.piece.kinds[0];
        const packet::PartView part{context, leg, making.solids.solid(KindId{0}), {}};
        const AxisView view = axis_view(plus_z, plus_y);
        const packet::DrawnView drawn{view, 1, [](Point point) { return point; }};
        const auto text = [&](const packet::DimensionedAxes& axes) {
            const std::vector<Leader> leaders = packet::taper_leaders(part, drawn, axes);
            return leaders.empty() ? "" : leaders[0].text;
        };
        CHECK(text({}) == "taper from 23\" to 1 1/8\"");
        CHECK(text({Axis::wide}) == "taper to 1 1/8\"");
        CHECK(text({Axis::deep}) == "taper from 23\"");
        CHECK(text({Axis::wide, Axis::deep}) == "");
        // From its end nothing is seen of how far along the part it goes.
        const packet::DrawnView end{axis_view(plus_x, plus_y), 1, [](Point point) { return point; }};
        CHECK(packet::taper_leaders(part, end, {}).empty());
        // On the sheet running dimensions say both.
        for (const packet::Draft& draft : packet::part_sheets(context, KindId{0})) {
            for (const Item& item : draft.sheet.items) {
                const auto* shown = std::get_if<Text>(&item);
                CHECK((shown == nullptr || !shown->text.starts_with("taper from")));
            }
        }
    }

    TEST_CASE("edges that differ are each told at a corner of their own, the right ones too") {
        // The leg's four long edges.
        std::vector<Feature> features;
        for (std::size_t i = 0; i < 4; ++i) {
            const FeatureOp op = i == 3 ? FeatureOp::bevel : FeatureOp::blend;
            features.push_back(edge_feature(op, {long_edges()[i]}, inches(static_cast<long>(i) + 1, 16)));
        }
        const Sheet sheet = sheet_with(KindId{0}, std::move(features));
        for (const char* note : {"R 1/16\"", "R 1/8\"", "R 3/16\"", "1/4\" × 45°"}) {
            CAPTURE(note);
            CHECK(count(sheet, note) == 1);
        }
    }
}
