#include <doctest/doctest.h>

#include <cmath>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/drawing/shaded.hpp"
#include "backends/drawing/spread.hpp"
#include "backends/drawing/table.hpp"
#include "backends/drawing/title_block.hpp"
#include "backends/epoch.hpp"
#include "tests/unit/drawing/test_fonts.hpp"

using namespace rodwright;
using namespace rodwright::drawing;

static const Direction right{Axis::wide, true};
static const Direction back{Axis::deep, true};
static const Direction up{Axis::tall, true};

TEST_SUITE("unit/drawing") {
    TEST_CASE("labels are moved apart by no more than they must") {
        CHECK(spread({}, 5, 0, 100).empty());
        CHECK(spread({10, 50}, 5, 0, 100) == std::vector<double>{10, 50});
        // Two on one spot part evenly; at the edge they are pushed inside.
        CHECK(spread({50, 50}, 4, 0, 100) == std::vector<double>{48, 52});
        CHECK(spread({0, 1}, 4, 0, 100) == std::vector<double>{0, 4});
        CHECK(spread({99, 100}, 4, 0, 100) == std::vector<double>{96, 100});
        // No room for all: evenly over what there is.
        CHECK(spread({1, 2, 3}, 10, 0, 12) == std::vector<double>{0, 6, 12});
    }

    TEST_CASE("spread labels keep their distance and their order") {
        std::vector<double> wanted;
        for (int i = 0; i < 20; ++i) wanted.push_back(std::floor(i * i * 0.37));
        const std::vector<double> places = spread(wanted, 4.5, -10, 150);
        for (std::size_t i = 1; i < places.size(); ++i) CHECK(places[i] - places[i - 1] >= 4.5 - 1e-9);
        CHECK(places.front() >= -10);
        CHECK(places.back() <= 150);
    }

    TEST_CASE("the standard views have their axes where a maker looks for them") {
        const AxisView front = axis_view(-back, up);
        CHECK(front.right == right);
        const AxisView plan = from_above(front);
        CHECK(plan.towards == up);
        CHECK(plan.right == right);
        CHECK(plan.up == back);
        const AxisView from_right = from_side(front, true);
        CHECK(from_right.towards == right);
        CHECK(from_right.right == back);
        CHECK(from_right.up == up);
        CHECK(from_side(front, false).right == -back);
    }

    TEST_CASE("an arc is drawn through its three points whichever way it runs") {
        ViewLine line;
        line.shape = LineShape::arc;
        line.radius = 10;
        for (const bool forward : {true, false}) {
            line.points = {{10, 0}, {0, 10}, {-10, 0}};
            if (!forward) std::swap(line.points[0], line.points[2]);
            const Item drawn = drawn_line(line, ViewPlace{2, {0, 0}, {100, 100}}, LineRole::hidden);
            const Arc& arc = std::get<Arc>(drawn);
            CHECK(arc.role == LineRole::hidden);
            CHECK(arc.radius == doctest::Approx(20));
            const Point middle = arc.at(arc.start + arc.sweep / 2);
            CHECK(middle.x == doctest::Approx(100));
            CHECK(middle.y == doctest::Approx(120));
            CHECK(arc.to().x == doctest::Approx(forward ? 80 : 120));
        }
    }

    TEST_CASE("the nearer part hides the farther one, in any order") {
        std::vector<Triangle> square = {
            {{Point3{0, 0, 0}, Point3{10, 0, 0}, Point3{10, 10, 0}}, {0, 0, 1}, 0},
            {{Point3{0, 0, 0}, Point3{10, 10, 0}, Point3{0, 10, 0}}, {0, 0, 1}, 0}};
        ShadedPart low{&square, {}, 1, black};
        ShadedPart high{&square, {}, 2, black};
        high.pose.move = {5, 0, 3};
        const PixelGrid grid = pixel_grid({0, 0, 20, 10}, 40);
        const View from_top{{0, 0, 1}, {0, 1, 0}};
        for (const auto& parts : {std::vector{low, high}, std::vector{high, low}}) {
            const std::vector<std::uint32_t> seen = parts_seen(parts, from_top, grid);
            CHECK(seen[grid.index(10, 4)] == 1);
            CHECK(seen[grid.index(10, 14)] == 2);  // x = 7.25: under the higher one
            CHECK(seen[grid.index(10, 39)] == no_part);
        }
        const auto seen = parts_seen({low, high}, from_top, grid);
        CHECK(inmost_point(seen, grid, 1).x == doctest::Approx(2.5).epsilon(0.15));
    }

    TEST_CASE("a table goes on from sheet to sheet without losing a line") {
        Table table;
        table.columns = {{"item"}, {"note"}};
        for (int i = 0; i < 40; ++i)
            table.rows.push_back(
                {{std::to_string(i), "a note of several words " + std::to_string(i)}, false});
        table.rows[20].cells[1] = "";
        for (int i = 0; i < 60; ++i) table.rows[20].cells[1] += "word" + std::to_string(i) + "\n";
        const TableLayout layout = lay_out_table(table, 50, fonts());
        TableCursor cursor;
        std::string drawn;
        int sheets = 0;
        while (cursor.row < layout.rows.size() && sheets < 50) {
            Sheet sheet;
            const Rect room{10, 10, 60, 110};
            cursor = draw_table(sheet, layout, cursor, room);
            for (const Item& item : sheet.items) {
                const Text* text = std::get_if<Text>(&item);
                if (text == nullptr) continue;
                CHECK(room.contains(text_box(*text, fonts()), 1e-3));
                drawn += text->text + " ";
            }
            ++sheets;
        }
        CHECK(cursor.row == layout.rows.size());
        for (int i = 0; i < 40; ++i) {
            if (i != 20) CHECK(drawn.find("words " + std::to_string(i)) != std::string::npos);
        }
        for (int i = 0; i < 60; ++i) CHECK(drawn.find("word" + std::to_string(i) + " ") != std::string::npos);
    }

    TEST_CASE("a number keeps its fraction, and `x` what it counts") {
        CHECK(words_of("rail x 2, top 1 5/8\" wide") ==
              std::vector<std::string>{"rail", "x 2,", "top", "1 5/8\"", "wide"});
        CHECK(words_of("3/4\" x 1 1/2\"") == std::vector<std::string>{"3/4\"", "x 1 1/2\""});
        CHECK(words_of("264 mm wide") == std::vector<std::string>{"264 mm", "wide"});
        CHECK(words_of("~1 1/2\" [~3 5/32\"]") == std::vector<std::string>{"~1 1/2\"", "[~3 5/32\"]"});
        CHECK(words_of("two\n1/2") == std::vector<std::string>{"two", "1/2"});
    }

    TEST_CASE("a whole column stays on one line while the others have room to wrap") {
        Table table;
        table.columns = {{"what", Align::left, true}, {"places"}};
        std::string many;
        for (int i = 0; i < 30; ++i) many += "100; ";
        table.rows = {{{"mortise and tenon", many}}};
        const TableLayout roomy = lay_out_table(table, 90, fonts());
        CHECK(roomy.rows[0].cells[0].size() == 1);
        CHECK(roomy.rows[0].cells[1].size() > 1);
        const TableLayout narrow = lay_out_table(table, 40, fonts());
        CHECK(narrow.rows[0].cells[0].size() > 1);
        CHECK(narrow.height == table.height);
    }

    TEST_CASE("a date is a date, and nothing else is") {
        CHECK(date_text(epoch_time("0")) == "1970-01-01");
        CHECK(date_text(epoch_time("951782400")) == "2000-02-29");
        CHECK(date_text(epoch_time("")) == "");
        CHECK(date_text(epoch_time("-1")) == "");
        CHECK(date_text(epoch_time("12x")) == "");
        CHECK(date_text(epoch_time("99999999999999999999")) == "");
    }

    TEST_CASE("a wood's colour is read, anything else is a light wood") {
        CHECK(colour_of("#c8b089") == Colour{0xc8, 0xb0, 0x89});
        CHECK(colour_of("#c8b08") == colour_of(""));
        CHECK(colour_of("#zzzzzz") == colour_of("red"));
    }
}
