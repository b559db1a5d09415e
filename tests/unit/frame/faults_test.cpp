#include <cmath>
#include <limits>

#include "tests/reference/frame/chain.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

frame::Fault fault_of(const frame::Model& model) {
    frame::Fault fault;
    CHECK_FALSE(frame::Factored::make(model, fault).has_value());
    return fault;
}

Chain held_shelf() {
    Chain beam = chain(900, 4, rectangle(250, 19), 12000, 900);
    beam.model.nodes.front().fixed = held_fast;
    return beam;
}

}  // namespace

TEST_SUITE("unit/frame") {
    TEST_CASE("what hangs on nothing is a mechanism, and is named") {
        Chain beam = held_shelf();
        frame::Node loose = beam.model.nodes.back();
        loose.name = "loose";
        beam.model.nodes.push_back(loose);
        CHECK(fault_of(beam.model).kind == frame::Fault::Kind::mechanism);
        CHECK(fault_of(beam.model).name == "loose");
    }

    TEST_CASE("a frame that turns about its supports is a mechanism") {
        Chain beam = held_shelf();
        beam.model.nodes.front().fixed = pinned;
        CHECK(fault_of(beam.model).kind == frame::Fault::Kind::mechanism);
    }

    TEST_CASE("a part on a joint that slides is a mechanism of that part") {
        Chain beam = held_shelf();
        beam.model.beams.erase(beam.model.beams.begin() + 3);
        beam.model.nodes.back().name = "slat";
        frame::Spring spring;
        spring.name = "joint";
        spring.first = 3;
        spring.second = 4;
        spring.point = beam.model.nodes[4].at;
        spring.stiffness.diagonal() << 0, 1e3, 1e3, 1e6, 1e6, 1e6;
        beam.model.springs.push_back(spring);
        const frame::Fault fault = fault_of(beam.model);
        CHECK(fault.kind == frame::Fault::Kind::mechanism);
        CHECK(fault.name == "slat");
    }

    TEST_CASE("beams without length, size or stiffness are refused by name") {
        for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
            CAPTURE(bad);
            Chain beam = held_shelf();
            beam.model.beams[2].name = "bad";
            beam.model.beams[2].section.area = bad;
            CHECK(fault_of(beam.model).kind == frame::Fault::Kind::bad_number);
            CHECK(fault_of(beam.model).name == "bad");
        }
        Chain beam = held_shelf();
        beam.model.nodes[1].at = beam.model.nodes[0].at;
        CHECK(fault_of(beam.model).kind == frame::Fault::Kind::bad_number);
        beam = held_shelf();
        beam.model.beams[0].across = {1, 0, 0};
        CHECK(fault_of(beam.model).kind == frame::Fault::Kind::bad_number);
        beam = held_shelf();
        frame::Spring spring;
        spring.name = "joint";
        spring.second = 1;
        spring.stiffness(0, 0) = std::nan("");
        beam.model.springs.push_back(spring);
        CHECK(fault_of(beam.model).name == "joint");
    }

    TEST_CASE("forces and reactions balance, and two runs give the same bits") {
        Chain beam = held_shelf();
        beam.model.nodes.back().fixed = on_rollers;
        const frame::Solution once = solved(beam.model, uniform(beam, 321));
        const frame::Solution again = solved(beam.model, uniform(beam, 321));
        CHECK(once.reactions.front()(1) + once.reactions.back()(1) == doctest::Approx(321));
        for (std::size_t i = 0; i < once.motions.size(); ++i) CHECK(once.motions[i] == again.motions[i]);
    }

    TEST_CASE("a frame that is fixed everywhere stays where it is") {
        Chain beam = held_shelf();
        for (frame::Node& node : beam.model.nodes) node.fixed = held_fast;
        const frame::Solution solution = solved(beam.model, uniform(beam, 100));
        CHECK(solution.motions[2].norm() == 0);
        CHECK(solution.beams[0].start(1) == doctest::Approx(12.5));
    }
}
