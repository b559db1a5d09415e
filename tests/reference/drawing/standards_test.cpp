// Values of the drawing standards, from the sources that each case names.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/depth_buffer.hpp"
#include "backends/drawing/line_style.hpp"
#include "backends/drawing/scale.hpp"
#include "backends/drawing/sheet_format.hpp"
#include "backends/drawing/title_block.hpp"

using namespace rodwright;
using namespace rodwright::drawing;
using doctest::Approx;

TEST_SUITE("reference/drawing") {
    TEST_CASE("scales of ISO 5455") {
        // Enlargement 50:1 20:1 10:1 5:1 2:1, full size, reduction 1:2 1:5 1:10 1:20 1:50 1:100.
        const std::vector<std::string> listed = {"50:1", "20:1", "10:1", "5:1",  "2:1",  "1:1",
                                                 "1:2",  "1:5",  "1:10", "1:20", "1:50", "1:100"};
        std::vector<std::string> ours;
        for (const Scale& scale : scales(LengthUnit::millimetre)) ours.push_back(scale.text());
        ours.resize(listed.size());
        CHECK(ours == listed);
    }

    TEST_CASE("inch scales are whole or common fractions of an inch to the foot") {
        // 6 in, 3 in, 1 1/2 in, 1 in, 3/4 in, 1/2 in, 3/8 in, 1/4 in to the foot of 12 in: common practice.
        const double inches_to_the_foot[] = {6, 3, 1.5, 1, 0.75, 0.5, 0.375, 0.25};
        std::vector<double> ours;
        for (const Scale& scale : scales(LengthUnit::inch)) ours.push_back(12 * scale.factor());
        for (const double listed : inches_to_the_foot) {
            CAPTURE(listed);
            CHECK(std::find(ours.begin(), ours.end(), listed) != ours.end());
        }
    }

    TEST_CASE("the largest listed scale that fits is chosen") {
        // 1067 mm on 150 mm of paper: 1:5 needs 213, 1:10 needs 107; in inches 1:4 needs 267, 1:8 needs 133.
        CHECK(choose_scale(LengthUnit::millimetre, 1067, 100, 150, 100).text() == "1:10");
        CHECK(choose_scale(LengthUnit::inch, 1067, 100, 150, 100).text() == "1:8");
        CHECK(choose_scale(LengthUnit::millimetre, 10, 10, 150, 100).text() == "1:1");
        CHECK(choose_scale(LengthUnit::millimetre, 10, 10, 150, 100, {5, 1}).text() == "5:1");
    }

    TEST_CASE("sheet sizes of ISO 216 with the frames of ISO 5457") {
        // Drawing spaces A4 180 x 277 and A3 390 x 277: 20 mm off the filing edge, 10 mm off the others.
        const SheetFormat& a4 = *find_sheet_format("a4");
        CHECK(a4.width == 210);
        CHECK(a4.height == 297);
        const Sheet sheet = framed_sheet(a4, "");
        CHECK(sheet.frame.width() == Approx(180));
        CHECK(sheet.frame.height() == Approx(277));
        CHECK(sheet.frame.left == 20);
        const Sheet wide = framed_sheet(*find_sheet_format("a3"), "");
        CHECK(wide.width == 420);
        CHECK(wide.frame.width() == Approx(390));
        CHECK(wide.frame.height() == Approx(277));
    }

    TEST_CASE("sizes A and B of ANSI/ASME Y14.1") {
        // 8.5 x 11 and 11 x 17 inches; B lies on its side.
        CHECK(find_sheet_format("letter")->width == Approx(215.9));
        CHECK(find_sheet_format("letter")->height == Approx(279.4));
        CHECK(find_sheet_format("tabloid")->width == Approx(431.8));
        CHECK(find_sheet_format("tabloid")->height == Approx(279.4));
    }

    TEST_CASE("grid references of ISO 5457 and ANSI/ASME Y14.1") {
        // From memory of the standards: A3 has 8 x 6 fields, A4 4 x 6 along its top and right side, all of
        // 50 mm but those in the corners; size B has 4 x 2 fields of 4.25 x 5.5 in.
        const auto fields = [](const char* word) {
            const SheetFormat& format = *find_sheet_format(word);
            const Rect frame = framed_sheet(format, "").frame;
            return std::pair(zone_count(frame.left, frame.right, format.width / 2, format.zones.across),
                             zone_count(frame.bottom, frame.top, format.height / 2, format.zones.upright));
        };
        CHECK(fields("a3") == std::pair<std::size_t, std::size_t>(8, 6));
        CHECK(fields("a4") == std::pair<std::size_t, std::size_t>(4, 6));
        CHECK(fields("tabloid") == std::pair<std::size_t, std::size_t>(4, 2));
        CHECK(find_sheet_format("a4")->zones.sides == Zones::Sides::upper_and_right);
        CHECK(find_sheet_format("letter")->zones.sides == Zones::Sides::none);
    }

    TEST_CASE("centring marks end on the axes of the sheet, A is where the standard has it") {
        for (const SheetFormat& format : sheet_formats()) {
            CAPTURE(format.word);
            const Sheet sheet = framed_sheet(format, "");
            int marks = 0;
            double first_letter = 0;
            for (const Item& item : sheet.items) {
                const auto* stroke = std::get_if<Stroke>(&item);
                if (stroke != nullptr && stroke->role == LineRole::frame && stroke->points.size() == 2) {
                    ++marks;
                    const Point at = stroke->points[0];
                    CHECK((at.x == Approx(format.width / 2) || at.y == Approx(format.height / 2)));
                }
                const auto* text = std::get_if<Text>(&item);
                if (text != nullptr && text->text == "A") first_letter = text->at.y;
            }
            CHECK(marks == 4);
            // ISO counts from the top down, Y14.1 from the bottom up.
            if (format.zones.sides != Zones::Sides::none)
                CHECK((first_letter > format.height / 2) == (format.word != "tabloid"));
        }
    }

    TEST_CASE("ISO 128: wide lines are twice as wide as narrow ones, hidden lines are narrow and dashed") {
        const LineStyle& visible = line_style(LineRole::visible);
        const LineStyle& hidden = line_style(LineRole::hidden);
        CHECK(visible.width == 2 * hidden.width);
        CHECK(line_style(LineRole::dimension).width == hidden.width);
        CHECK(visible.dashes.empty());
        REQUIRE(hidden.dashes.size() == 2);
        CHECK(hidden.dashes[0] == Approx(12 * hidden.width));  // from memory of ISO 128-2
        CHECK(hidden.dashes[1] == Approx(3 * hidden.width));
    }

    TEST_CASE("ISO 7200: the title block is at most 180 mm wide, in the lower right corner") {
        for (const SheetFormat& format : sheet_formats()) {
            const Rect frame = framed_sheet(format, "").frame;
            const Rect box = title_block_box(frame);
            CHECK(box.width() <= 180);
            CHECK(box.right == frame.right);
            CHECK(box.bottom == frame.bottom);
        }
    }

    TEST_CASE("isometric axes run at 30 degrees and are shortened alike by sqrt(2/3)") {
        // ISO 5456-3; the ratio by geometry: cos(asin(1/sqrt(3))).
        const ViewAxes axes = axes_of(isometric_view());
        for (const Point3& unit : {Point3{1, 0, 0}, Point3{0, 1, 0}}) {
            const Point3 seen = axes.seen(unit);
            CHECK(std::hypot(seen[0], seen[1]) == Approx(std::sqrt(2.0 / 3.0)));
            CHECK(std::abs(std::atan2(seen[1], seen[0])) == Approx(std::numbers::pi / 6));
        }
        const Point3 tall = axes.seen({0, 0, 1});
        CHECK(tall[0] == Approx(0));
        CHECK(tall[1] == Approx(std::sqrt(2.0 / 3.0)));
    }
}
