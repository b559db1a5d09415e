// Stiffness and strength of woods against the handbook's printed values.
#include <doctest/doctest.h>

#include "compiler/check/strength/placed.hpp"
#include "compiler/data/woods.hpp"
#include "compiler/stdlib.hpp"

using namespace rodwright;

namespace {

constexpr double psi = 0.006894757;  // MPa

WoodMechanics mechanics_of(const std::string& key) {
    static const WoodTable woods = [] {
        SourceManager sources;
        Diagnostics diagnostics;
        for (const EmbeddedFile& file : stdlib_files()) {
            if (file.path != "data/woods.yaml") continue;
            auto read = read_woods(sources, sources.add(file.path, file.text, true), diagnostics);
            REQUIRE(read.has_value());
            return std::move(*read);
        }
        throw std::logic_error("no woods");
    }();
    const WoodSpecies* species = woods.find(key);
    REQUIRE(species != nullptr);
    REQUIRE(species->mechanics.has_value());
    return *species->mechanics;
}

}  // namespace

TEST_SUITE("reference/strength") {
    // Source: Wood Handbook, FPL-GTR-282 (2021), table 5-3b, 12 % moisture: MOR psi, MOE 10^6 psi,
    // compression and shear along the grain psi, specific gravity.
    TEST_CASE("bending, stiffness, crushing and shear of a dozen woods, in pounds per square inch") {
        struct Row {
            const char* key;
            double rupture;
            double modulus;
            double crushing;
            double shear;
            double gravity;
        };
        for (const Row& row :
             std::initializer_list<Row>{{"white_ash", 15400, 1.74e6, 7410, 1910, 0.60},
                                        {"red_elm", 13000, 1.49e6, 6360, 1630, 0.53},
                                        {"eastern_white_pine", 8600, 1.24e6, 4800, 900, 0.35},
                                        {"beech", 14900, 1.72e6, 7300, 2010, 0.64},
                                        {"red_oak", 14300, 1.82e6, 6760, 1780, 0.63},
                                        {"white_oak", 15200, 1.78e6, 7440, 2000, 0.68},
                                        {"hard_maple", 15800, 1.83e6, 7830, 2330, 0.63},
                                        {"walnut", 14600, 1.68e6, 7580, 1370, 0.55},
                                        {"cherry", 12300, 1.49e6, 7110, 1700, 0.50},
                                        {"yellow_poplar", 10100, 1.58e6, 5540, 1190, 0.42},
                                        {"douglas_fir", 12400, 1.95e6, 7230, 1130, 0.48},
                                        {"sitka_spruce", 10200, 1.57e6, 5610, 1150, 0.40}}) {
            CAPTURE(row.key);
            const WoodMechanics wood = mechanics_of(row.key);
            CHECK(wood.rupture == doctest::Approx(row.rupture * psi).epsilon(0.001));
            CHECK(wood.modulus == doctest::Approx(row.modulus * psi).epsilon(0.0005));
            CHECK(wood.crushing == doctest::Approx(row.crushing * psi).epsilon(0.002));
            CHECK(wood.shear == doctest::Approx(row.shear * psi).epsilon(0.01));
            CHECK(wood.gravity == doctest::Approx(row.gravity).epsilon(0.002));
        }
    }

    // Source: the same, table 5-5b: imported woods.
    TEST_CASE("teak, true mahogany and sapele") {
        CHECK(mechanics_of("teak").rupture == doctest::Approx(14600 * psi).epsilon(0.001));
        CHECK(mechanics_of("mahogany").modulus == doctest::Approx(1.50e6 * psi).epsilon(0.0005));
        CHECK(mechanics_of("sapele").shear == doctest::Approx(2260 * psi).epsilon(0.005));
    }

    // Source: Wood Handbook, FPL-GTR-190 (2010), table 5-1: E_T, E_R, G_LR, G_LT over E_L.
    TEST_CASE("elastic ratios of ash, red oak, walnut and spruce; means of R and T are used") {
        struct Row {
            const char* key;
            double tangential, radial, lr, lt;
        };
        for (const Row& row : std::initializer_list<Row>{{"white_ash", 0.080, 0.125, 0.109, 0.077},
                                                         {"red_oak", 0.082, 0.154, 0.089, 0.081},
                                                         {"walnut", 0.056, 0.106, 0.085, 0.062},
                                                         {"sitka_spruce", 0.043, 0.078, 0.064, 0.061}}) {
            CAPTURE(row.key);
            const WoodMechanics wood = mechanics_of(row.key);
            CHECK(wood.across == doctest::Approx((row.tangential + row.radial) / 2));
            CHECK(wood.shear_modulus == doctest::Approx((row.lr + row.lt) / 2));
        }
    }

    // Source: Wood Handbook, FPL-GTR-282, chapter 9: G of about E_L / 16 where it is not known.
    TEST_CASE("G of a wood without printed ratios") {
        CHECK(mechanics_of("beech").shear_modulus == doctest::Approx(1.0 / 16));
    }

    // Source: Wood Handbook, FPL-GTR-190, table 12-1: 0.45 to 0.80, 0.52, 1.01 to 1.24 million psi.
    TEST_CASE("boards made in sheets lie within the printed ranges") {
        CHECK(mechanics_of("hardboard").modulus > 0.45e6 * psi);
        CHECK(mechanics_of("hardboard").modulus < 0.80e6 * psi);
        CHECK(mechanics_of("mdf").modulus == doctest::Approx(0.52e6 * psi).epsilon(0.005));
        CHECK(mechanics_of("plywood").modulus > 1.01e6 * psi);
        CHECK(mechanics_of("plywood").modulus < 1.24e6 * psi);
    }
}
