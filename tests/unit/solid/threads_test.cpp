// Many threads at once get from the kernel what one alone gets.
#include <doctest/doctest.h>

#include <algorithm>
#include <atomic>
#include <stdexcept>
#include <system_error>

#include "compiler/at_once.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

constexpr std::size_t times = 24;

// Its long edges rounded, so that it has outlines within its faces, and a hole.
Kind rounded_rail() {
    Kind kind = kind_of(120, 40, 30);
    kind.features.push_back(edge_feature(FeatureOp::blend, long_edges(), 6));
    kind.features.push_back(body_feature(
        FeatureOp::remove, cylinder_body({vector_of(60, 20, 0), plus_x, plus_y, plus_z}, 10, 30)));
    return kind;
}

std::vector<ViewLine> pictorial(const SolidRef& solid) {
    return kernel().view({{solid, {}, 0}}, {{1, -1, 1}, {0, 0, 1}}, true);
}

bool same(const std::vector<ViewLine>& a, const std::vector<ViewLine>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const ViewLine& one, const ViewLine& other) {
        return one.points == other.points && one.visible == other.visible && one.shape == other.shape &&
               one.line_class == other.line_class;
    });
}

}  // namespace

TEST_SUITE("unit/solid") {
    TEST_CASE("work done at once is each done once, and the first failure in order comes out") {
        std::vector<std::atomic<int>> calls(1000);
        at_once(calls.size(), [&](std::size_t i) { ++calls[i]; });
        CHECK(std::all_of(calls.begin(), calls.end(), [](const auto& count) { return count == 1; }));
        at_once(0, [](std::size_t) { FAIL("there is nothing to do"); });
        std::atomic<int> done = 0;
        const auto failing = [&](std::size_t i) {
            ++done;
            if (i % 10 == 3) throw std::runtime_error(std::to_string(i));
        };
        CHECK_THROWS_WITH_AS(at_once(50, failing), "3", std::runtime_error);
        CHECK(done == 50);
    }

    TEST_CASE("where the system gives no thread the work is done without") {
        int asked = 0;
        const StartThread none = [&](const std::function<void()>&) -> std::jthread {
            ++asked;
            throw std::system_error(std::make_error_code(std::errc::resource_unavailable_try_again));
        };
        std::vector<int> calls(50);
        at_once(
            calls.size(), [&](std::size_t i) { ++calls[i]; }, none);
        CHECK(std::count(calls.begin(), calls.end(), 1) == 50);
        CHECK(asked == (std::thread::hardware_concurrency() > 1 ? 1 : 0));
    }

    TEST_CASE("solids built, seen, cut and measured by several threads are those of one") {
        const SolidRef alone = build(rounded_rail());
        const std::vector<ViewLine> lines = pictorial(alone);
        const Bounds half{{0, 0, 0}, {60, 40, 30}};
        const double half_volume = kernel().volume(*kernel().within(alone, half));
        std::vector<int> wrong(times);
        at_once(times, [&](std::size_t i) {
            Diagnostics diagnostics;
            const SolidRef own = kernel().build(Piece(), rounded_rail(), diagnostics);
            const SolidRef& seen = i % 2 == 0 ? own : alone;
            wrong[i] += own == nullptr || !diagnostics.ok();
            wrong[i] += !same(pictorial(seen), lines);
            const SolidRef left = kernel().within(seen, half);
            wrong[i] += left == nullptr || kernel().volume(*left) != half_volume;
            wrong[i] += kernel().triangles(*seen, 0.2).empty();
        });
        for (const int each : wrong) CHECK(each == 0);
    }
}
