// The data files of the work plan: those that come with the compiler, and bad ones.
#include <doctest/doctest.h>

#include "compiler/evaluate/design.hpp"
#include "compiler/workplan/work_data.hpp"

using namespace rodwright;

namespace {

std::optional<OrderRules> rules_of(const std::string& rule, Diagnostics& diagnostics) {
    SourceManager sources;
    return read_order_rules({}, embedded_work_data().operations, sources,
                            sources.add("order.yaml", "rules:\n  - " + rule + "\n"), diagnostics);
}

std::optional<OperationTable> operations_of(const std::string& fields, Diagnostics& diagnostics) {
    SourceManager sources;
    const std::string text = "caution: c\noperations:\n  - {name: a, " + fields +
                             ", text: t, time: {source: assumed}}\n"
                             "times: {steps: {}, machines: {}, by_hand: {each: 1 min, source: assumed}}\n";
    return read_operations({}, sources, sources.add("operations.yaml", text), diagnostics);
}

MemoryWorld with_operations(const std::string& text) {
    std::map<std::string, std::string> files;
    files["bench/operations.yaml"] = text;
    return MemoryWorld(std::move(files));
}

}  // namespace

TEST_SUITE("unit/workplan") {
    TEST_CASE("forty rules and more come with the compiler, each with its reason") {
        const OrderRules& order = embedded_work_data().order;
        CHECK(order.rules.size() >= 40);
        for (const OrderRule& rule : order.rules) CHECK_FALSE(rule.because.empty());
        CHECK(order.notes.size() == 4);
    }

    TEST_CASE("a rule that names nothing is a mistake in its file") {
        Diagnostics good;
        CHECK(rules_of("{before: orient, after: '*.cut', because: b, source: common, wait: clamp}", good));
        for (const char* rule : {"{before: orient, after: saw, because: b, source: common}",
                                 "{before: orient, after: '.cut', because: b, source: common}",
                                 "{before: orient, because: b, source: common}",
                                 "{before: orient, after: mill, because: b, source: common, wait: long}"}) {
            CAPTURE(rule);
            Diagnostics diagnostics;
            CHECK_FALSE(rules_of(rule, diagnostics));
            CHECK(diagnostics.errors() == 1);
        }
    }

    TEST_CASE("a shop's own times and operations lie over the library's") {
        const MemoryWorld world = with_operations(
            "operations:\n"
            "  - {name: sharpen, stage: mill, applies: all, text: t, time: {each: 2 min, source: own}}\n"
            "  - {name: orient, stage: lay_out, applies: all, text: own, time: {source: own}}\n"
            "times:\n  machines: {planer: {set_up: 7 min, source: own}}\n");
        SourceManager sources;
        Diagnostics diagnostics;
        const LibraryFiles library(world, std::nullopt);
        const auto own = read_work_data(world, library, "bench/piece.rod", sources, diagnostics);
        REQUIRE(own);
        const OperationTable& usual = embedded_work_data().operations;
        CHECK(own->operations.operations.size() == usual.operations.size() + 1);
        CHECK(own->operations.operations.back().name == "sharpen");
        CHECK(own->operations.find("orient")->text == "own");
        CHECK(own->operations.caution == usual.caution);
        CHECK(own->operations.machine_times.at("planer").set_up == 420);
        CHECK_FALSE(own->operations.machine_times.at("planer").assumed);
        CHECK(own->operations.machine_times.at("router").set_up == usual.machine_times.at("router").set_up);
        // Elsewhere nothing lies over them.
        const auto other = read_work_data(world, library, "piece.rod", sources, diagnostics);
        REQUIRE(other);
        CHECK(other->operations.operations.size() == usual.operations.size());
        const MemoryWorld bad = with_operations("operations:\n  - {name: sharpen, stage: soon}\n");
        CHECK_FALSE(
            read_work_data(bad, LibraryFiles(bad, std::nullopt), "bench/piece.rod", sources, diagnostics));
        CHECK_FALSE(diagnostics.ok());
    }

    TEST_CASE("operations with a word that is not theirs") {
        Diagnostics good;
        CHECK(operations_of("stage: mill, applies: all", good));
        for (const char* fields :
             {"stage: milling, applies: all", "stage: mill, applies: some",
              "stage: mill, applies: all, each: weight", "stage: mill, applies: all, speed: 3"}) {
            CAPTURE(fields);
            Diagnostics diagnostics;
            CHECK_FALSE(operations_of(fields, diagnostics));
            CHECK(diagnostics.errors() >= 1);
        }
    }

    TEST_CASE("a maker's rules are added to the library's") {
        const MemoryWorld world(
            {{"piece/order.yaml",
              "rules:\n  - {before: orient, after: '*.fit', because: we do, source: common}\n"},
             {"piece/shop.yaml", "workers: 2\nclamps:\n  - {length: 600mm, count: 4}\n"}});
        SourceManager sources;
        Diagnostics diagnostics;
        const std::optional<WorkData> data =
            read_work_data(world, LibraryFiles(world, std::nullopt), "piece/a.rod", sources, diagnostics);
        REQUIRE(data);
        CHECK(data->order.rules.size() == embedded_work_data().order.rules.size() + 1);
        CHECK(data->order.rules.back().because == "we do");
        CHECK(data->shop.workers() == 2);
        REQUIRE(data->shop.clamps().size() == 1);
        CHECK(data->shop.clamps()[0].length == 600);
        // What the file does not speak of is the library's.
        CHECK(data->shop.machine("table_saw") != nullptr);
    }

    TEST_CASE("a shop with mistakes") {
        for (const char* text : {"workers: 3\n", "workers: one\n", "clamps:\n  - {length: 24, count: 2}\n",
                                 "machines:\n  saw: {widest: 0 in}\n", "machines: [saw]\n",
                                 "fits: {chisel: any}\n", "instead:\n  saw: hand\n", "lamps: 3\n"}) {
            CAPTURE(text);
            SourceManager sources;
            Diagnostics diagnostics;
            CHECK_FALSE(overlay_shop(embedded_work_data().shop, sources, sources.add("shop.yaml", text),
                                     diagnostics));
            CHECK(diagnostics.errors() >= 1);
        }
    }

    TEST_CASE("glues and finishes, each with its times") {
        const Curing& curing = embedded_work_data().curing;
        // A published table: yellow PVA 5 min open, 30 min in clamps.
        CHECK(curing.glue.name == "yellow_PVA");
        CHECK(curing.glue.open == 300);
        CHECK(curing.glue.clamp == 1800);
        CHECK(curing.finish("shellac").recoat == 2 * 3600);
        CHECK(curing.finish("something_else").recoat == curing.usual_finish.recoat);
    }
}
