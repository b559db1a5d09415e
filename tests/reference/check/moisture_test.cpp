// Moisture and movement against the Wood Handbook's tables and its worked example, and a trade association's
// table.
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "compiler/check/movement/change.hpp"
#include "compiler/check/movement/moisture.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

double kelvin_of(double fahrenheit) {
    return (fahrenheit + 459.67) * 5 / 9;
}

// Change for each percent, as a part of the width, of a board of that wood and cut.
double rate_of(const std::string& wood, Axis kind_axis) {
    const CompiledDesign design =
        compile_body("wood timber = " + wood +
                     "\npart board of timber { grain wide; left = piece.left; wide = "
                     "600mm; front = piece.front; deep = 200mm; bottom = piece.bottom; "
                     "tall = 20mm }");
    return change_per_percent(design.piece(), design.kind("board"), kind_axis).value();
}

double width_rate(const std::string& wood) {
    return rate_of(wood, Axis::deep);
}

}  // namespace

TEST_SUITE("reference/check") {
    // Source: Wood Handbook, FPL-GTR-190 (2010), table 4-2, p. 4-4: three of its rows whole, twelve
    // humidities each, and single values of others. It prints one decimal of equation 4-5; 0.06 is the
    // rounding, and what the book rounded on its way.
    TEST_CASE("equilibrium moisture content by the handbook's table") {
        struct Row {
            double fahrenheit;
            std::array<double, 19> percent;  // at 5, 10, ... 95 % relative humidity
        };
        for (const Row& row : {Row{30,
                                   {1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.4, 13.5,
                                    14.9, 16.5, 18.5, 21.0, 24.3}},
                               Row{70,
                                   {1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1,
                                    14.4, 16.0, 17.9, 20.5, 23.9}},
                               Row{110,
                                   {1.1, 2.2, 3.2, 4.0, 4.9, 5.6, 6.3, 7.0, 7.7, 8.4, 9.2, 10.0, 11.0, 12.0,
                                    13.2, 14.7, 16.6, 19.1, 22.4}}}) {
            for (std::size_t i = 0; i < row.percent.size(); ++i) {
                CAPTURE(row.fahrenheit);
                CAPTURE(i);
                const double humidity = 0.05 * static_cast<double>(i + 1);
                CHECK(std::abs(equilibrium_moisture(kelvin_of(row.fahrenheit), humidity) - row.percent[i]) <=
                      0.06);
            }
        }
        struct Value {
            double fahrenheit, humidity, percent;
        };
        for (const Value& value : {Value{40, 0.30, 6.3},
                                   {40, 0.80, 16.5},
                                   {50, 0.65, 12.3},
                                   {80, 0.40, 7.6},
                                   {100, 0.60, 10.3},
                                   {130, 0.50, 7.9},
                                   {140, 0.90, 17.7}}) {
            CAPTURE(value.fahrenheit);
            CHECK(std::abs(equilibrium_moisture(kelvin_of(value.fahrenheit), value.humidity) -
                           value.percent) <= 0.06);
        }
    }

    // Source: Wood Handbook, FPL-GTR-190, p. 13-16 and 13-17: a white fir board 232 mm (9.15 in) wide,
    // flat-grained, from 8 to 11 % moisture: 1.7 mm (0.067 in) wider, 233.7 mm. That it is white fir, flat
    // and from 8 % is from memory, as the beginning of the example was not to be read.
    TEST_CASE("the handbook's worked example of a change in width") {
        const double change = 232 * width_rate("white_fir flat") * (11 - 8);
        CHECK(change == doctest::Approx(1.7).epsilon(0.005));
        CHECK(232 + change == doctest::Approx(233.7).epsilon(0.0001));
        CHECK(change / 25.4 == doctest::Approx(0.067).epsilon(0.005));
        CHECK(rate_of("white_fir flat", Axis::tall) == doctest::Approx(0.00112));
    }

    // Source: a widely printed sum with the handbook's coefficients: flat-sawn cherry, 12 in, 8 to 12 %:
    // 0.119 in; and one of quartered white oak, 18 in, 13 to 7 %: 0.194 in.
    TEST_CASE("printed sums of cherry and white oak") {
        CHECK(12 * width_rate("cherry flat") * 4 == doctest::Approx(0.119).epsilon(0.004));
        CHECK(18 * width_rate("white_oak quartered") * 6 == doctest::Approx(0.194).epsilon(0.004));
    }

    // Source: shrinkage from green to ovendry, Wood Handbook, FPL-GTR-190, table 4-3, read from the page.
    // Table 13-5 of the same book is made from it by s / (30 (1 - s (30 - 10) / 30)), which was found by
    // trying it on all rows.
    TEST_CASE("coefficients fit the shrinkage of the same book") {
        struct Shrinkage {
            const char* wood;
            double radial, tangential;  // percent
        };
        for (const Shrinkage& row : {Shrinkage{"red_alder", 4.4, 7.3},
                                     {"black_ash", 5.0, 7.8},
                                     {"white_ash", 4.9, 7.8},
                                     {"quaking_aspen", 3.5, 6.7},
                                     {"basswood", 6.6, 9.3},
                                     {"beech", 5.5, 11.9},
                                     {"paper_birch", 6.3, 8.6},
                                     {"yellow_birch", 7.3, 9.5},
                                     {"butternut", 3.4, 6.4},
                                     {"cherry", 3.7, 7.1},
                                     {"chestnut", 3.4, 6.7},
                                     {"cottonwood", 3.9, 9.2},
                                     {"american_elm", 4.2, 9.5},
                                     {"rock_elm", 4.8, 8.1},
                                     {"red_elm", 4.9, 8.9},
                                     {"hackberry", 4.8, 8.9},
                                     {"sassafras", 4.0, 6.2},
                                     {"sweetgum", 5.3, 10.2},
                                     {"sycamore", 5.0, 8.4},
                                     {"black_tupelo", 5.1, 8.7},
                                     {"walnut", 5.5, 7.8},
                                     {"yellow_poplar", 4.6, 8.2},
                                     {"douglas_fir", 4.8, 7.6},
                                     {"white_fir", 3.3, 7.0}}) {
            CAPTURE(row.wood);
            const auto coefficient = [](double percent) {
                const double s = percent / 100;
                return s / (30 * (1 - s * (30 - 10) / 30));
            };
            CHECK(std::abs(rate_of(std::string(row.wood) + " quartered", Axis::deep) -
                           coefficient(row.radial)) <= 1.5e-5);
            CHECK(std::abs(rate_of(std::string(row.wood) + " flat", Axis::deep) -
                           coefficient(row.tangential)) <= 1.5e-5);
        }
    }

    // Source: a trade association's table (American Hardwood Information Center), change of 12 in of
    // plain-sawn lumber from 10 to 5 % moisture, in 64ths of an inch. It is coarse and lies up to 5/64 below
    // the handbook's.
    TEST_CASE("a trade association's table of hardwoods, roughly") {
        struct Row {
            const char* wood;
            double sixty_fourths;
        };
        for (const Row& row : {Row{"white_ash", 10},
                               {"butternut", 8},
                               {"cherry", 9},
                               {"hard_maple", 12},
                               {"walnut", 10},
                               {"yellow_birch", 12},
                               {"yellow_poplar", 9},
                               {"pecan", 11}}) {
            CAPTURE(row.wood);
            const double ours = 12 * width_rate(std::string(row.wood) + " flat") * 5 * 64;
            CHECK(ours >= row.sixty_fourths);
            CHECK(ours <= row.sixty_fourths + 5);
        }
    }

    // Source: a flooring trade association's technical publication (NWFA A200), coefficients of change, which
    // it takes from the Wood Handbook: an independent copy of single rows.
    TEST_CASE("coefficients by a flooring association's table") {
        CHECK(width_rate("eastern_white_pine quartered") == doctest::Approx(0.00071));
        CHECK(width_rate("eastern_white_pine flat") == doctest::Approx(0.00212));
        CHECK(width_rate("mahogany quartered") == doctest::Approx(0.00172));
        CHECK(width_rate("mahogany flat") == doctest::Approx(0.00238));
        CHECK(width_rate("teak flat") == doctest::Approx(0.00186));
        CHECK(width_rate("douglas_fir flat") == doctest::Approx(0.00267));
    }

    // Source: Wood Handbook, FPL-GTR-190, chapter 4: along the grain 0.1 to 0.2 % from green to ovendry,
    // which it calls negligible; sheet goods are not in its table.
    TEST_CASE("along the grain and in sheets nothing moves, and an unknown wood is unknown") {
        CHECK(rate_of("white_ash flat", Axis::wide) == 0);
        CHECK(rate_of("birch_plywood", Axis::deep) == 0);
        const CompiledDesign design = compile_body(
            "wood timber = jarrah\npart board of timber { grain wide; left = piece.left; wide = 600mm; "
            "front = piece.front; deep = 200mm; bottom = piece.bottom; tall = 20mm }");
        CHECK_FALSE(change_per_percent(design.piece(), design.kind("board"), Axis::deep).has_value());
    }
}
