// What work asks of machines, held against what they take.
#include <doctest/doctest.h>

#include "compiler/workplan/machines/machine_limits.hpp"
#include "tests/support/sample_piece.hpp"
#include "tests/unit/workplan/planned.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

Shop shop_of(const std::string& yaml) {
    SourceManager sources;
    Diagnostics diagnostics;
    std::optional<Shop> shop =
        overlay_shop(embedded_work_data().shop, sources, sources.add("shop.yaml", yaml), diagnostics);
    REQUIRE(shop);
    return std::move(*shop);
}

void check_refused(const std::string& yaml) {
    CAPTURE(yaml);
    SourceManager sources;
    Diagnostics diagnostics;
    CHECK_FALSE(
        overlay_shop(embedded_work_data().shop, sources, sources.add("shop.yaml", yaml), diagnostics));
    CHECK(diagnostics.list().at(0).code == Code::bad_data);
}

const MachineLimit* find(const std::vector<MachineLimit>& limits, const std::string& what) {
    const auto found = std::ranges::find(limits, what, &MachineLimit::what);
    return found == limits.end() ? nullptr : &*found;
}

ToolNeed::Alternative bit(const Rational& size) {
    return {"straight_bit", {{"", Quantity::length(size)}}};
}

}  // namespace

TEST_SUITE("unit/workplan") {
    TEST_CASE("settings, reach, width and speed of a cutter are held against the machine") {
        const Piece piece = sample_piece();
        const Shop shop = shop_of(
            "machines:\n  router: {holds: [straight_bit], most: {depth: 1 in}, largest: 1/2 in, slowest: "
            "20000, "
            "fastest: 24000}\n"
            "cutters:\n  straight_bit: {reach: [{from: 1/4 in, deep: 3/4 in}]}\n"
            "turns:\n  - {cutters: [straight_bit], most: [{up_to: 1 in, turns: 16000}]}\n");
        AskedWork asked;
        asked.settings = {{"depth", {}, {}}, {"fence", "square", {}}};
        asked.settings[0].value.words = {Quantity::length(inches(7, 8))};
        asked.cutter = bit(inches(3, 4));
        const auto limits = limits_of(piece, *shop.machine("router"), shop, asked);
        REQUIRE(limits.size() == 4);
        CHECK(find(limits, "depth")->kept());
        CHECK_FALSE(find(limits, "largest cutter")->kept());
        CHECK_FALSE(find(limits, "reach of the straight bit")->kept());
        CHECK_FALSE(find(limits, "slowest turns a minute")->kept());
        CHECK(find(limits, "slowest turns a minute")->code == Code::too_fast);
        // Smaller than any that the reach is known of.
        asked.cutter = bit(inches(1, 8));
        CHECK(find(limits_of(piece, *shop.machine("router"), shop, asked), "reach of the straight bit") ==
              nullptr);
    }

    TEST_CASE("a part is hard to hold where it is short and narrow, not where it is one of them") {
        const Piece piece = sample_piece();
        const PartId rail = piece.kinds[1].parts.front();
        const Kind& kind = piece.kinds[1];
        const auto held_at = [&](const Rational& length, const Rational& width) {
            Machine machine;
            machine.smallest = SmallestHeld{length, width, "hold it"};
            AskedWork asked;
            asked.parts = {rail};
            const auto limits = limits_of(piece, machine, Shop(), asked);
            return std::ranges::all_of(limits, [](const MachineLimit& each) { return each.kept(); });
        };
        const Rational long_enough = kind.overall(Axis::wide);
        const Rational wide_enough = kind.overall(Axis::deep);
        CHECK(held_at(long_enough, wide_enough));
        CHECK(held_at(long_enough, wide_enough + 1));
        CHECK(held_at(long_enough + 1, wide_enough));
        CHECK_FALSE(held_at(long_enough + 1, wide_enough + 1));
    }

    TEST_CASE("numbers keep the nearest to each limit of each machine") {
        const Piece piece = sample_piece();
        const auto limit = [](const std::string& machine, int asked, int most, bool at_least) {
            return MachineLimit{machine, "depth", Quantity::length(asked), Quantity::length(most), at_least};
        };
        const std::vector<Number> numbers =
            machine_numbers(piece, {limit("router", 3, 10, false), limit("mortiser", 20, 10, true),
                                    limit("router", 7, 10, false), limit("mortiser", 12, 10, true)});
        REQUIRE(numbers.size() == 2);
        CHECK(numbers[0].title == "router: depth");
        CHECK(numbers[0].value.value == 7);
        CHECK(numbers[1].value.value == 12);
    }

    TEST_CASE("what the machine does not take is done the next way that does, and said") {
        Piece piece = sample_piece();
        StepTemplate& mortise = piece.joint_kinds[0].work.steps[2];
        REQUIRE(mortise.name == "cut_mortise");
        mortise.machine = "mortiser";
        mortise.settings = {{"depth", {}, {}}};
        mortise.settings[0].value.words = {Quantity::length(inches(4))};
        mortise.cutter = ToolNeed::Alternative{"chisel", {{"", Quantity::length(inches(1, 4))}}};
        Diagnostics diagnostics;
        const auto plan = plan_work(piece, embedded_work_data(), std::nullopt, {}, diagnostics);
        REQUIRE(plan);
        REQUIRE(diagnostics.list().size() == 1);
        CHECK(diagnostics.list()[0].code == Code::beyond_machine);
        const Operation& done =
            plan->operations[place(*plan, piece.joint_kinds[0].work.definition, "cut_mortise")];
        // Neither router nor drill press go that deep.
        CHECK(done.machine.empty());
        CHECK(text_of(done).find("Too much for the mortiser.") != std::string::npos);
        CHECK(text_of(done).find(diagnostics.list()[0].help) != std::string::npos);
    }

    TEST_CASE("a wide cutter's speed is a setting where the machine would turn it too fast") {
        Piece piece = sample_piece();
        StepTemplate& mortise = piece.joint_kinds[0].work.steps[2];
        mortise.machine = "router_table";
        mortise.settings.clear();
        mortise.cutter = ToolNeed::Alternative{"chamfer_bit", {{"", Quantity::length(inches(3, 4))}}};
        const WorkPlan plan = planned(piece);
        const Operation& done =
            plan.operations[place(plan, piece.joint_kinds[0].work.definition, "cut_mortise")];
        REQUIRE(done.settings.size() == 1);
        CHECK(done.settings[0].name == "speed");
        CHECK(read_out(done.settings[0].value, piece.style) == "16000 turns a minute at the most");
    }

    TEST_CASE("limits that are not as they should be are refused") {
        check_refused("machines:\n  router: {most: {depth: deep}}\n");
        check_refused("machines:\n  router: {most: {depth: 0 in}}\n");
        check_refused("machines:\n  router: {smallest: {length: 12 in}}\n");
        check_refused("machines:\n  router: {largest: 1}\n");
        check_refused("machines:\n  router: {slowest: 3 in}\n");
        check_refused("turns:\n  - {cutters: [straight_bit], most: [{up_to: 1 in}]}\n");
        check_refused("cutters:\n  straight_bit: {reach: [{from: 1 in}]}\n");
    }
}
