#include "backends/drawing/tiling.hpp"
#include "tests/unit/drawing/test_fonts.hpp"

#include <doctest/doctest.h>

#include <numbers>

#include "backends/drawing/pdf/pdf_writer.hpp"
#include "backends/drawing/seen.hpp"
#include "backends/drawing/svg/svg_writer.hpp"
#include "backends/drawing/text_run.hpp"

using namespace rodwright;
using namespace rodwright::drawing;

static Sheet drawing_of(double width, double height) {
    Sheet drawing;
    drawing.frame = {-20, -5, width - 20, height - 5};
    drawing.rectangle(LineRole::visible, drawing.frame);
    return drawing;
}

static bool holds(const Rect& tile, Point point) {
    return tile.contains({point.x, point.y, point.x, point.y});
}

// How many tiles show the point.
static std::size_t count_on(const Tiling& tiling, Point point) {
    std::size_t count = 0;
    for (std::size_t column = 0; column < tiling.columns(); ++column) {
        for (std::size_t row = 0; row < tiling.rows(); ++row)
            count += holds(tiling.tile(column, row), point) ? 1 : 0;
    }
    return count;
}

static Sheet tile_sheet(const Sheet& drawing, const Tiling& tiling, std::size_t column, std::size_t row) {
    Sheet sheet;
    draw_tile(sheet, drawing, tiling, column, row, {0, 0}, fonts());
    return sheet;
}

template <typename Kind>
static std::vector<Kind> all_of(const Sheet& sheet) {
    std::vector<Kind> found;
    for (const Item& item : sheet.items) {
        if (const auto* own = std::get_if<Kind>(&item)) found.push_back(*own);
    }
    return found;
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("as few tiles as it takes, none larger than the room") {
        struct Case {
            double width, height;
            std::size_t columns, rows;
        };
        // A row of n tiles of 190 covers 190 n - 10 (n - 1): 190, 370, 550.
        for (const Case& each : {Case{190, 100, 1, 1}, Case{191, 100, 2, 1}, Case{370, 250, 2, 1},
                                 Case{371, 251, 3, 2}, Case{550, 490, 3, 2}, Case{5, 5, 1, 1}}) {
            CAPTURE(each.width);
            const Tiling tiling(drawing_of(each.width, each.height), 190, 250, fonts());
            CHECK(tiling.columns() == each.columns);
            CHECK(tiling.rows() == each.rows);
            CHECK(tiling.tile(0, 0).width() <= 190 + 1e-9);
            CHECK(tiling.tile(0, 0).height() <= 250 + 1e-9);
        }
    }

    TEST_CASE("every point is on a tile, and only in the overlap on more than one") {
        const Sheet drawing = drawing_of(700, 600);
        const Tiling tiling(drawing, 190, 250, fonts());
        REQUIRE(tiling.count() == 12);
        for (double x = drawing.frame.left; x <= drawing.frame.right; x += 3.5) {
            for (double y = drawing.frame.bottom; y <= drawing.frame.top; y += 3) {
                const std::size_t count = count_on(tiling, {x, y});
                if (count < 1 || count > 4) FAIL_CHECK("on ", count, " tiles: ", x, ", ", y);
            }
        }
        // What is printed twice is the overlap and no more: widths add up to that of the drawing and 10 mm a
        // seam.
        CHECK(4 * tiling.tile(0, 0).width() == doctest::Approx(700 + 3 * 10.0));
        CHECK(3 * tiling.tile(0, 0).height() == doctest::Approx(600 + 2 * 10.0));
        CHECK(tiling.tile(0, 0).right - tiling.tile(1, 0).left == doctest::Approx(10));
        CHECK(tiling.tile(0, 1).top - tiling.tile(0, 0).bottom == doctest::Approx(10));
    }

    TEST_CASE("neighbours have two registration points in common, drawn as crosses at both") {
        const Sheet drawing = drawing_of(700, 600);
        const Tiling tiling(drawing, 190, 250, fonts());
        for (std::size_t column = 0; column + 1 < tiling.columns(); ++column) {
            for (std::size_t row = 0; row < tiling.rows(); ++row) {
                std::size_t shared = 0;
                for (const Point& point : tiling.registration()) {
                    if (holds(tiling.tile(column, row), point) && holds(tiling.tile(column + 1, row), point))
                        ++shared;
                }
                CHECK(shared >= 2);
            }
        }
        const Tiling row(drawing_of(300, 60), 190, 250, fonts());
        REQUIRE(row.registration().size() == 2);
        for (const std::size_t column : {0U, 1U}) {
            const Sheet sheet = tile_sheet(drawing_of(300, 60), row, column, 0);
            const std::vector<Arc> circles = all_of<Arc>(sheet);
            REQUIRE(circles.size() == 2);
            const Rect tile = row.tile(column, 0);
            CHECK(circles[0].centre.x + tile.left == doctest::Approx(row.registration()[0].x));
            CHECK(circles[1].centre.y + tile.bottom == doctest::Approx(row.registration()[1].y));
        }
    }

    TEST_CASE("registration crosses stand beside texts, not on them") {
        Sheet drawing = drawing_of(300, 60);
        // In the middle of the overlap, at both ends of it.
        for (const double y : {0.0, 50.0})
            drawing.text({"123", FontFace::regular, 2.5, {130, y}, Align::middle, false});
        const Tiling tiling(drawing, 190, 250, fonts());
        for (const Point& point : tiling.registration()) {
            for (const Text& text : all_of<Text>(drawing)) {
                const Rect cross = Rect{point.x, point.y, point.x, point.y}.grown(3.5);
                CHECK(!cross.overlaps(text_box(text, fonts())));
            }
        }
    }

    TEST_CASE("an arc over the seam stays an arc on both tiles, a text is whole on one of them") {
        Sheet drawing = drawing_of(300, 60);
        drawing.circle(LineRole::visible, {130, 25}, 20);
        drawing.text({"near the seam", FontFace::regular, 2.5, {100, 40}, Align::left, false});
        const Tiling tiling(drawing, 190, 250, fonts());
        std::size_t texts = 0;
        for (const std::size_t column : {0U, 1U}) {
            const Sheet sheet = tile_sheet(drawing, tiling, column, 0);
            std::vector<Arc> arcs = all_of<Arc>(sheet);
            std::erase_if(arcs, [](const Arc& arc) { return arc.radius < 20; });
            REQUIRE(arcs.size() == 1);
            CHECK(arcs[0].whole());
            CHECK(arcs[0].centre.x == doctest::Approx(130 - tiling.tile(column, 0).left));
            texts += all_of<Text>(sheet).size();
            CHECK(all_of<ClipStart>(sheet).size() == all_of<ClipEnd>(sheet).size());
            for (const auto& box : seen_boxes(sheet.items, fonts())) {
                if (box) CHECK(Rect{0, 0, tiling.tile(0, 0).width(), 60}.contains(*box, 1e-6));
            }
        }
        CHECK(texts == 1);
    }

    TEST_CASE("tiles are named by column and row") {
        CHECK(tile_name(0, 0) == "A1");
        CHECK(tile_name(1, 0) == "B1");
        CHECK(tile_name(25, 1) == "Z2");
        CHECK(tile_name(26, 0) == "AA1");
    }

    TEST_CASE("what clips hide is not seen; they nest") {
        std::vector<Item> items;
        items.emplace_back(Stroke{LineRole::visible, {{0, 5}, {100, 5}}});
        items.emplace_back(ClipStart{{10, 0, 50, 10}});
        items.emplace_back(Stroke{LineRole::visible, {{0, 5}, {100, 5}}});
        items.emplace_back(ClipStart{{40, 0, 90, 10}});
        items.emplace_back(Stroke{LineRole::visible, {{0, 5}, {100, 5}}});
        items.emplace_back(Stroke{LineRole::visible, {{60, 5}, {80, 5}}});
        items.emplace_back(ClipEnd{});
        items.emplace_back(ClipEnd{});
        items.emplace_back(Stroke{LineRole::visible, {{60, 5}, {80, 5}}});
        const auto boxes = seen_boxes(items, fonts());
        CHECK(boxes[0]->right == 100);
        CHECK(boxes[2]->left == 10);
        CHECK(boxes[2]->right == 50);
        CHECK(boxes[4]->left == 40);
        CHECK(boxes[4]->right == 50);
        CHECK(!boxes[5].has_value());
        CHECK(boxes[8]->left == 60);
    }

    TEST_CASE("both formats clip, and draw as before behind the clip") {
        Sheet sheet;
        sheet.width = sheet.height = 100;
        sheet.frame = {0, 0, 100, 100};
        sheet.line(LineRole::visible, {0, 10}, {100, 10});
        sheet.items.emplace_back(ClipStart{{10, 20, 40, 60}});
        sheet.line(LineRole::dimension, {0, 30}, {100, 30});
        sheet.items.emplace_back(ClipEnd{});
        sheet.line(LineRole::dimension, {0, 90}, {100, 90});
        const std::string svg = write_svg(sheet, sheet.frame, "", fonts());
        CHECK(svg.find(
                  "<clipPath id=\"clip1\"><rect x=\"10\" y=\"40\" width=\"30\" height=\"40\"/></clipPath>"
                  "\n<g clip-path=\"url(#clip1)\">\n<path d=\"M0 70L100 70\" class=\"dimension\"/>\n</g>") !=
              std::string::npos);
        Diagnostics diagnostics;
        const auto pdf = write_pdf({sheet}, fonts(), {"t", "", false}, diagnostics);
        REQUIRE(pdf.has_value());
        const std::size_t clip = pdf->find("re\nW\nn\n");
        REQUIRE(clip != std::string::npos);
        const std::size_t end = pdf->find("Q\n", clip);
        REQUIRE(end != std::string::npos);
        // The narrow width is said again: the end of the clip took it back to the wide one.
        CHECK(pdf->find("0.71 w", end) != std::string::npos);
    }
}
