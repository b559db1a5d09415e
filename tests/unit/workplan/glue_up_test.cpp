// Glue-ups of the examples: every joint closed once, along a way that is free, in the time that the glue
// gives.
#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <set>

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/workplan/glue_up/plan_glue_ups.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"
#include "tests/unit/workplan/planned.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

struct Glued {
    Piece piece;
    Diagnostics diagnostics;
    SolidStore solids{piece, diagnostics};
    std::optional<AssemblyFacts> facts;
    std::vector<GlueUp> glue_ups;

    explicit Glued(const std::string& example)
        : piece(compile_text(example_text(example)).piece()), facts(assembly_facts(piece, solids)) {
        REQUIRE(facts);
        glue_ups = plan_glue_ups(piece, facts->blocking, facts->apart, embedded_work_data().curing);
    }
};

std::vector<std::string> examples() {
    return {"keepers_table", "chart_shelf", "instrument_tray"};
}

// Whether the motion, taken back, meets nothing that is there already.
bool is_free(const Blocking& blocking, const BringIn& motion) {
    for (const PartId goes : motion.goes) {
        for (const PartId stays : motion.to) {
            if (blocking.meets(static_cast<std::size_t>(goes), static_cast<std::size_t>(stays), -motion.way))
                return false;
        }
    }
    return true;
}

}  // namespace

TEST_SUITE("unit/workplan") {
    TEST_CASE("every joint is closed once, by a motion that is free") {
        for (const std::string& example : examples()) {
            CAPTURE(example);
            const Glued glued(example);
            std::map<JointId, int> closed;
            for (const GlueUp& glue_up : glued.glue_ups) {
                for (const BringIn& motion : glue_up.motions) {
                    CHECK(is_free(glued.facts->blocking, motion));
                    for (const JointId joint : motion.glued) ++closed[joint];
                    for (const JointId joint : motion.dry) ++closed[joint];
                }
            }
            for (std::size_t i = 0; i < glued.piece.joints.size(); ++i) {
                const auto joint = static_cast<JointId>(i);
                const bool fastening = glued.piece[glued.piece.joints[i].kind].fastening;
                CHECK(closed[joint] == (fastening ? 0 : 1));
            }
        }
    }

    TEST_CASE("what is glued at once is closed while the glue is open, and what comes later holds it") {
        for (const std::string& example : examples()) {
            CAPTURE(example);
            const Glued glued(example);
            const Curing& curing = embedded_work_data().curing;
            for (std::size_t i = 0; i < glued.glue_ups.size(); ++i) {
                const GlueUp& glue_up = glued.glue_ups[i];
                CHECK(glue_up.open_needed <= static_cast<Seconds>(curing.glue.open.get_d()));
                CHECK((glue_up.open_needed == 0 || !glue_up.clamps.empty()));
                for (std::size_t j = i + 1; j < glued.glue_ups.size(); ++j) {
                    std::vector<PartId> both;
                    std::ranges::set_intersection(glue_up.parts, glued.glue_ups[j].parts,
                                                  std::back_inserter(both));
                    CHECK((both.empty() || both == glue_up.parts));
                }
            }
        }
    }

    TEST_CASE("the table: two frames, the shelf, and what joins them") {
        const Glued table("keepers_table");
        REQUIRE(table.glue_ups.size() == 5);
        std::multiset<std::size_t> joints;
        for (const GlueUp& glue_up : table.glue_ups) joints.insert(glue_up.joints);
        CHECK(joints == std::multiset<std::size_t>{2, 2, 4, 4, 18});
        // The last one holds all but the top, which is screwed on. Its diagonals are those of the legs' outer
        // faces seen from above: 38 in by 18 in.
        const GlueUp& last = table.glue_ups.back();
        CHECK(last.parts.size() == table.piece.parts.size() - 1);
        REQUIRE(last.diagonal);
        CHECK(last.diagonal->length == doctest::Approx(25.4 * std::sqrt(38.0 * 38 + 18 * 18)));
        REQUIRE(last.clamps.size() == 1);
        CHECK(last.clamps[0].reach == inches(20));
    }

    TEST_CASE("without the solids all joints are closed in one glue-up") {
        const Glued table("keepers_table");
        const std::vector<GlueUp> one = one_glue_up(table.piece);
        REQUIRE(one.size() == 1);
        CHECK(one[0].joints == 30);
    }
}
