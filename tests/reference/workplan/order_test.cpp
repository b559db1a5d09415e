// The order of work against sequences that are in print.
//
// W. B. Laughlin, "Tool Processes in Woodworking", chapter I (as restated in our notes of shop practice):
// bill of material, select and mark stock, square all of it, lay out, cut and fit the joints, scrape and
// sand, assemble and finish. The order of glue-ups of a table, legs and rails as flat frames, then what joins
// the frames, then the top: common practice, no source.
#include <doctest/doctest.h>

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/workplan/plan_work.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

WorkPlan plan_of(const std::string& example) {
    const Piece piece = compile_text(example_text(example)).piece();
    Diagnostics diagnostics;
    SolidStore solids(piece, diagnostics);
    std::optional<WorkPlan> plan =
        plan_work(piece, embedded_work_data(), assembly_facts(piece, solids), {}, diagnostics);
    REQUIRE(plan);
    return std::move(*plan);
}

// The most, mm^3, that what goes and what it comes to share on the way in.
double most_shared(SolidStore& solids, const std::vector<PlacedSolid>& placed, const BringIn& motion) {
    double most = 0;
    for (const double off : {0.0, 0.1, 0.5, 1.0, 2.0, 4.0, 7.0, 11.0, 16.0, 25.0, 40.0, 80.0, 160.0, 320.0}) {
        for (const PartId goes : motion.goes) {
            PlacedSolid moved = placed[static_cast<std::size_t>(goes)];
            moved.pose.move[static_cast<std::size_t>(motion.way.axis)] += motion.way.positive ? -off : off;
            for (const PartId stays : motion.to)
                most =
                    std::max(most, solids.kernel()->overlap(moved, placed[static_cast<std::size_t>(stays)]));
        }
    }
    return most;
}

struct Places {
    std::size_t first = 0;
    std::size_t last = 0;
};

// Where in the list the work of that name on boards stands.
Places places(const WorkPlan& plan, const std::string& name) {
    Places span{plan.operations.size(), 0};
    for (std::size_t i = 0; i < plan.operations.size(); ++i) {
        if (plan.operations[i].name != name) continue;
        span.first = std::min(span.first, i);
        span.last = std::max(span.last, i);
    }
    CAPTURE(name);
    REQUIRE(span.first < plan.operations.size());
    return span;
}

}  // namespace

TEST_SUITE("reference/workplan") {
    TEST_CASE("the textbook's order, on each example") {
        const std::vector<std::string> printed = {
            "choose_boards", "flatten_face", "plane_thickness", "final_crosscut", "orient", "fit",
            "sand_inside",   "dry_fit",      "glue_up",         "inspect",        "coat"};
        for (const std::string& example : example_names()) {
            CAPTURE(example);
            const WorkPlan plan = plan_of(example);
            const auto there = [&](const std::string& name) {
                return std::ranges::find(plan.operations, name, &Operation::name) != plan.operations.end();
            };
            std::string before;
            for (const std::string& name : printed) {
                if (!there(name)) continue;
                if (!before.empty()) CHECK(places(plan, before).first < places(plan, name).first);
                before = name;
            }
            CHECK(places(plan, "choose_boards").last == 0);
        }
    }

    TEST_CASE("a table's base is glued as frames, then joined, and its top comes last") {
        const WorkPlan plan = plan_of("keepers_table");
        const std::vector<GlueUp>& glue_ups = plan.glue_ups;
        REQUIRE(glue_ups.size() == 5);
        std::size_t frames = 0;
        for (std::size_t i = 0; i < 3; ++i) frames += glue_ups[i].parts.size() == 3 ? 1 : 0;
        CHECK(frames == 2);  // two legs and a rail each
        CHECK(plan.operations.back().name == "fasten");
    }

    // Independent of the blocking relation that the plan was made from: the solids themselves, moved in small
    // steps, may share no more than a thousandth of a cubic millimetre anywhere on their way.
    TEST_CASE("glue-ups replayed with the solids: nothing passes through anything") {
        for (const std::string& example : example_names()) {
            CAPTURE(example);
            const Piece piece = compile_text(example_text(example)).piece();
            Diagnostics diagnostics;
            SolidStore solids(piece, diagnostics);
            const std::vector<PlacedSolid> placed = solids.placed();
            const auto plan =
                plan_work(piece, embedded_work_data(), assembly_facts(piece, solids), {}, diagnostics);
            REQUIRE(plan);
            std::size_t motions = 0;
            for (const GlueUp& glue_up : plan->glue_ups) {
                for (const BringIn& motion : glue_up.motions) {
                    ++motions;
                    CAPTURE(piece[motion.goes.front()].name);
                    CHECK(most_shared(solids, placed, motion) <= 1e-3);
                }
            }
            CHECK(motions >= plan->glue_ups.size());
        }
    }

    TEST_CASE("figures: set-ups at most 1.1 times the distinct ones, time within a tenth of the bound") {
        for (const std::string& example : example_names()) {
            CAPTURE(example);
            const WorkSums sums = plan_of(example).sums;
            CHECK(static_cast<double>(sums.set_ups) <= 1.1 * static_cast<double>(sums.set_ups_bound));
            CHECK(static_cast<double>(sums.makespan) <= 1.1 * static_cast<double>(sums.makespan_bound));
        }
    }
}
