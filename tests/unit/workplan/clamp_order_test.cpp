// Clamps that are on one glue-up are not there for another.
#include <doctest/doctest.h>

#include "compiler/workplan/order/clamp_order.hpp"
#include "tests/unit/workplan/planned.hpp"

using namespace rodwright;

namespace {

constexpr std::size_t parts = 6;

// Glue-ups of two parts each that have none in common, each with so many clamps of 600 mm.
struct Bench {
    std::vector<GlueUp> glue_ups;
    std::vector<WorkItem> items;

    explicit Bench(const std::vector<int>& clamps) {
        for (std::size_t i = 0; i < clamps.size(); ++i) {
            GlueUp glue_up;
            glue_up.clamps = {{Axis::wide, 600, clamps[i]}};
            glue_ups.push_back(glue_up);
            WorkItem item;
            item.operation.glue_up = i;
            item.parts = PartSet(parts);
            item.parts.set(2 * i).set(2 * i + 1);
            item.waits[static_cast<std::size_t>(WaitFor::clamp)] = 1800;
            items.push_back(std::move(item));
        }
    }
};

Shop shop_with(const std::string& clamps) {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("shop.yaml", "clamps: " + clamps + "\n");
    std::optional<Shop> shop = overlay_shop({}, sources, file, diagnostics);
    REQUIRE(shop);
    return std::move(*shop);
}

std::vector<std::pair<std::size_t, std::size_t>> waits_for(const Bench& bench, const Shop& shop) {
    std::vector<OrderEdge> edges;
    add_clamp_order(bench.items, bench.glue_ups, shop, edges);
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    for (const OrderEdge& edge : edges) {
        CHECK(edge.wait == 1800);
        pairs.emplace_back(edge.before, edge.after);
    }
    return pairs;
}

}  // namespace

TEST_SUITE("unit/workplan") {
    TEST_CASE("glue-ups stand side by side while there are clamps for all") {
        const Bench bench({2, 2, 2});
        CHECK(waits_for(bench, shop_with("[{length: 24 in, count: 6}]")).empty());
        CHECK(waits_for(bench, Shop()).empty());  // it does not say
    }

    TEST_CASE("the later one waits for as many as it has to") {
        using Pairs = std::vector<std::pair<std::size_t, std::size_t>>;
        const Bench bench({2, 2, 2});
        // Four clamps are two glue-ups at once: the third waits for the first.
        CHECK(waits_for(bench, shop_with("[{length: 24 in, count: 4}]")) == Pairs{{0, 2}});
        CHECK(waits_for(bench, shop_with("[{length: 24 in, count: 3}]")) == Pairs{{0, 1}, {0, 2}, {1, 2}});
        // Short clamps do not reach.
        CHECK(waits_for(bench, shop_with("[{length: 12 in, count: 9}, {length: 36 in, count: 4}]")) ==
              Pairs{{0, 2}});
    }

    TEST_CASE("what is glued on to an earlier glue-up comes after it in any case") {
        Bench bench({2, 2});
        bench.items[1].parts.set(0);
        CHECK(waits_for(bench, shop_with("[{length: 24 in, count: 2}]")).empty());
    }
}
