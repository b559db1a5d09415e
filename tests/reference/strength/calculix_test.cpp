// Two of the examples as frames of centre lines against another program, within 3 % on deflection and
// moments.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "compiler/check/frame/solve.hpp"
#include "tests/reference/strength/calculix.hpp"
#include "tests/reference/strength/skeleton.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

constexpr double close_enough = 0.03;

frame::NodeLoad force_at(std::size_t node, const frame::Vec3& force) {
    frame::NodeLoad load;
    load.node = node;
    load.force.head<3>() = force;
    return load;
}

// The bending moment at the end of a stretch without loads, from two clean nodes of it: moments run straight.
double end_moment(const CalculixResult& result, const frame::Model& model, std::size_t end, std::size_t next,
                  std::size_t after) {
    const double first = (model.nodes[next].at - model.nodes[end].at).norm();
    const double second = (model.nodes[after].at - model.nodes[next].at).norm();
    return (result.moments[next] + (result.moments[next] - result.moments[after]) * first / second).norm();
}

void compare_ends(const Skeleton& skeleton, const frame::Model& model, const frame::LoadCase& loads,
                  const frame::Solution& ours, const CalculixResult& theirs) {
    struct End {
        std::string part;
        double ours;
        double theirs;
    };
    std::vector<End> ends;
    const auto special = [&](std::size_t node) {
        return skeleton.shared(node) || node == loads.on_nodes.front().node;
    };
    for (const SkeletonBar& bar : skeleton.bars) {
        std::size_t from = 0;
        for (std::size_t i = 1; i < bar.nodes.size(); ++i) {
            if (!special(bar.nodes[i]) && i + 1 < bar.nodes.size()) continue;
            REQUIRE(i - from >= 3);
            const auto node = [&](std::size_t at) { return bar.nodes[at]; };
            const frame::Vec6& start = ours.beams[bar.first_beam + from].start;
            const frame::Vec6& end = ours.beams[bar.first_beam + i - 1].end;
            ends.push_back({bar.part, std::hypot(start(4), start(5)),
                            end_moment(theirs, model, node(from), node(from + 1), node(from + 2))});
            ends.push_back({bar.part, std::hypot(end(4), end(5)),
                            end_moment(theirs, model, node(i), node(i - 1), node(i - 2))});
            from = i;
        }
    }
    const double greatest = std::ranges::max(ends, {}, &End::theirs).theirs;
    for (const End& end : ends) {
        CAPTURE(end.part);
        CHECK(std::abs(end.ours - end.theirs) <= close_enough * greatest);
        if (end.theirs > greatest / 10) CHECK(end.ours == doctest::Approx(end.theirs).epsilon(close_enough));
    }
}

void compare(const Skeleton& skeleton, const frame::LoadCase& loads) {
    const frame::Model model = comparable(skeleton.model);
    frame::Fault fault;
    const auto factored = frame::Factored::make(model, fault);
    REQUIRE_MESSAGE(factored.has_value(), fault.name);
    const auto ours = factored->solve(loads);
    REQUIRE(ours.has_value());
    const CalculixResult theirs = run_calculix(model, loads);

    double most = 0;
    double apart = 0;
    for (std::size_t i = 0; i < model.nodes.size(); ++i) {
        most = std::max(most, theirs.moved[i].norm());
        apart = std::max(apart, (ours->motions[i].head<3>() - theirs.moved[i]).norm());
    }
    CHECK(most > 0.1);
    CHECK_MESSAGE(apart <= close_enough * most, apart << " mm of " << most);
    compare_ends(skeleton, model, loads, *ours, theirs);
}

}  // namespace

TEST_SUITE("reference/strength") {
    TEST_CASE("the frame of the writing table against CalculiX") {
        const CompiledDesign design = compile_text(example_text("keepers_table"));
        const Skeleton skeleton = skeleton_of(design.piece());
        compare(skeleton, {{force_at(skeleton.node("long_apron[front]", 0.5), {0, 0, -1000})}, {}});
        compare(skeleton, {{force_at(skeleton.node("leg[left front]", 1), {300, 0, 0})}, {}});
        compare(skeleton, {{force_at(skeleton.node("leg[right back]", 1), {0, 300, 0})}, {}});
    }

    TEST_CASE("the chart shelf against CalculiX") {
        const CompiledDesign design = compile_text(example_text("chart_shelf"));
        const Skeleton skeleton = skeleton_of(design.piece());
        compare(skeleton, {{force_at(skeleton.node("shelf[1]", 0.5), {0, 0, -267})}, {}});
        compare(skeleton, {{force_at(skeleton.node("side[left]", 1), {50, 0, 0})}, {}});
    }
}
