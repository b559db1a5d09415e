#include <doctest/doctest.h>

#include "backends/packet/parts/feature_table.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;

static Vector vector_at(long x, long y, long z) {
    return {{Rational(x), Rational(y), Rational(z)}};
}

// 400 x 60 x 20 mm with a tenon 25 long at its right end.
static Kind tenoned_rail() {
    Kind kind;
    kind.size = vector_at(400, 60, 20);
    kind.extend[0].high = 25;
    Feature tenon;
    tenon.op = FeatureOp::leave;
    tenon.made_by = "mortise_and_tenon";
    tenon.body = {BodyForm::box, {vector_at(400, 30, 10), plus_z, plus_y, plus_x}, 6, 40, 25, {}};
    kind.features.push_back(tenon);
    return kind;
}

static Feature pocket(const Body& body) {
    Feature feature;
    feature.op = FeatureOp::remove;
    feature.made_by = "housing";
    feature.body = body;
    return feature;
}

static std::vector<std::vector<std::string>> rows_of(const Kind& kind) {
    std::vector<std::vector<std::string>> rows;
    const LengthStyle style{LengthUnit::millimetre, ratio(1, 2), true};
    for (const auto& row : packet::feature_table(kind, drawing::axis_view(plus_z, plus_y), style).rows) {
        rows.push_back(row.cells);
    }
    return rows;
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("a tenon stands out of its end") {
        const auto rows = rows_of(tenoned_rail());
        REQUIRE(rows.size() == 1);
        CHECK(rows[0] == std::vector<std::string>{"mortise and tenon", "out of right end", "400", "25", "10",
                                                  "40", "7", "6"});
    }

    TEST_CASE("a socket swept across the part is open to the face it is cut into") {
        Kind kind = tenoned_rail();
        kind.features = {
            pocket({BodyForm::box, {vector_at(100, 0, 17), plus_x, plus_z, plus_y}, 20, 6, 60, {}})};
        const auto rows = rows_of(kind);
        REQUIRE(rows.size() == 1);
        CHECK(rows[0][1] == "into near face");
        CHECK(rows[0][2] == "90");
        CHECK(rows[0][6] == "0");
        CHECK(rows[0][7] == "6");
    }

    TEST_CASE("the same cut at several places is one row, and only what is in the wood counts") {
        Kind kind = tenoned_rail();
        kind.features.clear();
        for (const long x : {300L, 100L}) {
            kind.features.push_back(
                pocket({BodyForm::box, {vector_at(x, 30, 25), plus_x, plus_y, -plus_z}, 10, 8, 15, {}}));
        }
        const auto rows = rows_of(kind);
        REQUIRE(rows.size() == 1);
        CHECK(rows[0][2] == "95; 295");
        CHECK(rows[0][7] == "10");  // 5 of the 15 are in the air
        CHECK(packet::stations(kind, plus_x) == std::vector<Rational>{95, 105, 295, 305});
    }

    TEST_CASE("a hole is measured to its middle") {
        Kind kind = tenoned_rail();
        kind.features = {
            pocket({BodyForm::cylinder, {vector_at(50, 20, 20), plus_x, plus_y, -plus_z}, 8, 8, 12, {}})};
        const auto rows = rows_of(kind);
        REQUIRE(rows.size() == 1);
        CHECK(rows[0][2] == "50 to middle");
        CHECK(rows[0][3] == "8 dia.");
        CHECK(rows[0][4] == "20 to middle");
        CHECK(packet::stations(kind, plus_x) == std::vector<Rational>{50});
    }
}
