// Part sheets cut a part open where their views show a pocket as hidden lines only.
#include "backends/packet/parts/part_cuts.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "tests/support/sample_piece.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/sheet_check.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::drawing;
using namespace rodwright::testing;

namespace {

// A pocket 2 in long and 1/2 in wide, its middle at (x, y), 3/8 in deep into the top or the bottom face.
Feature pocket(const Rational& x, const Rational& y, bool into_top) {
    const Rational z = into_top ? inches(3, 4) : Rational(0);
    const Frame frame{vector_of(x, y, z), plus_x, into_top ? minus_y : plus_y, into_top ? minus_z : plus_z};
    Feature feature = body_feature(FeatureOp::remove, box_body(frame, inches(2), inches(1, 2), inches(3, 8)));
    feature.made_by = "mortise_and_tenon";
    return feature;
}

Kind board(std::vector<Feature> features) {
    Kind kind = kind_of(inches(30), inches(12), inches(3, 4));
    kind.features = std::move(features);
    return kind;
}

const std::vector<Direction> from_above = {plus_z};

std::vector<Rational> places_of(const Kind& kind) {
    std::vector<Rational> places;
    for (const packet::PartCut& cut : packet::cuts_of(kind, from_above)) places.push_back(cut.at);
    return places;
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("a part is cut where a pocket is hidden, and only there") {
        CHECK(places_of(board({pocket(inches(5), inches(3), true)})).empty());
        // 15 mm from where it begins: 4 in.
        CHECK(places_of(board({pocket(inches(5), inches(3), false)})) ==
              std::vector<Rational>{inches(4) + 15});
        CHECK(packet::cuts_of(board({pocket(inches(5), inches(3), false)}), {plus_z, minus_z}).empty());
    }

    TEST_CASE("pockets alike are cut once, and one cut shows all that it goes through") {
        CHECK(places_of(board({pocket(inches(5), inches(3), false), pocket(inches(15), inches(3), false)})) ==
              std::vector<Rational>{inches(4) + 15});
        // One at 9 in across is another, cut by the same plane only where both are.
        CHECK(places_of(board({pocket(inches(5), inches(3), false), pocket(inches(20), inches(9), false)}))
                  .size() == 2);
        CHECK(places_of(board({pocket(inches(5), inches(3), false), pocket(inches(20), inches(9), false),
                               pocket(inches(20), inches(3), false)})) ==
              std::vector<Rational>{inches(19) + 15});
    }

    TEST_CASE("the sheet has the section, hatched and named, and its plane in the front view") {
        Piece piece = sample_piece();
        // Two above, so that the front view looks at these; the third is behind.
        piece.kinds[3].features = {pocket(inches(5), inches(3), true), pocket(inches(15), inches(6), true),
                                   pocket(inches(25), inches(8), false)};
        for (const SheetFormat& format : sheet_formats()) {
            CAPTURE(format.word);
            Making making(piece);
            const packet::Context context = making.context({{"sheet", format.word}});
            const Sheet sheet = packet::part_sheets(context, KindId{3}).front().sheet;
            for (const std::string& fault : faults_of(sheet, *making.fonts)) FAIL_CHECK(fault);
            std::ptrdiff_t letters = 0;
            std::ptrdiff_t names = 0;
            std::ptrdiff_t hatching = 0;
            std::ptrdiff_t planes = 0;
            for (const Item& item : sheet.items) {
                if (const auto* text = std::get_if<Text>(&item)) {
                    letters += text->text == "A" && text->face == FontFace::bold ? 1 : 0;  // not the border's
                    names += text->text.starts_with("A-A, scale ") ? 1 : 0;
                }
                const auto* stroke = std::get_if<Stroke>(&item);
                if (stroke == nullptr) continue;
                hatching += stroke->role == LineRole::hatch ? 1 : 0;
                planes += stroke->role == LineRole::cutting_plane ? 1 : 0;
            }
            CHECK(letters == 2);
            CHECK(names == 1);
            CHECK(hatching > 5);
            CHECK(planes == 2);
        }
    }
}
