// Plans of the examples, replayed with the solids themselves.
#include <doctest/doctest.h>

#include <algorithm>

#include "compiler/assembly/placed_meshes.hpp"
#include "compiler/assembly/take_apart.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

struct Whole {
    CompiledDesign design;
    Diagnostics diagnostics;
    SolidStore solids{design.piece(), diagnostics};
    std::vector<PlacedSolid> placed = solids.placed();
    Blocking blocking{placed_meshes(design.piece(), solids)};

    explicit Whole(const std::string& text) : design(compile_text(text)) {}

    std::string name(std::size_t part) const { return design.piece().parts[part].name; }
    // The most, in cubic millimetres, that two of the parts share while the one is so far on its way.
    double most_shared(const Parting& parting, double so_far) {
        double most = 0;
        for (const std::size_t goes : parting.goes) {
            PlacedSolid moved = placed[goes];
            moved.pose.move[static_cast<std::size_t>(parting.way.axis)] +=
                parting.way.positive ? so_far : -so_far;
            for (const std::size_t stays : parting.stays)
                most = std::max(most, solids.kernel()->overlap(moved, placed[stays]));
        }
        return most;
    }
};

}  // namespace

TEST_SUITE("unit/assembly") {
    TEST_CASE("the examples come apart, and on their way no part passes through another") {
        for (const std::string& name : example_names()) {
            CAPTURE(name);
            Whole whole(example_text(name));
            const TakenApart apart = take_apart(whole.blocking);
            CHECK(apart.locked.empty());
            CHECK(apart.partings.size() == whole.placed.size() - 1);
            for (const Parting& parting : apart.partings) {
                CAPTURE(whole.name(parting.goes.front()));
                for (const double so_far : {0.0, 0.3, 4.0, 30.0, 200.0})
                    CHECK(whole.most_shared(parting, so_far) <= 1e-3);
            }
        }
    }

    TEST_CASE("the table's top is lifted off, and no slat goes along its dovetails' length") {
        Whole whole(example_text("keepers_table"));
        const TakenApart apart = take_apart(whole.blocking);
        CHECK(whole.name(apart.partings.front().goes.front()) == "top");
        CHECK(apart.partings.front().way == Direction{Axis::tall, true});
        std::size_t slats = 0;
        for (const Parting& parting : apart.partings) {
            if (parting.goes.size() != 1 || !whole.name(parting.goes[0]).starts_with("slat")) continue;
            ++slats;
            CHECK(parting.way.axis == Axis::tall);
        }
        CHECK(slats >= 8);
    }
}
