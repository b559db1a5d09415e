#include "compiler/assembly/take_apart.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <bit>
#include <random>

#include "compiler/assembly/locks.hpp"
#include "tests/unit/assembly/cubes.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

constexpr int room = 5;  // cells of a random puzzle each way

// Moves the cells one by one: nothing of Blocking in it.
bool runs_into(const Cells& mover, const Cells& other, Direction way) {
    Cells moved = mover;
    for (int step = 0; step <= 2 * room; ++step) {
        for (const Cell& cell : moved) {
            if (other.contains(cell)) return true;
        }
        Cells next;
        for (const Cell& cell : moved) next.insert(beside(cell, way));
        moved = std::move(next);
    }
    return false;
}

Cells together(const std::vector<Cells>& parts, unsigned chosen) {
    Cells cells;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (chosen >> i & 1U) cells.insert(parts[i].begin(), parts[i].end());
    }
    return cells;
}

// Every way to part the chosen ones in two, in every direction, and all that follows from it.
bool comes_apart(const std::vector<Cells>& parts, unsigned chosen) {
    if (std::popcount(chosen) < 2) return true;
    for (unsigned goes = (chosen - 1) & chosen; goes != 0; goes = (goes - 1) & chosen) {
        const Cells mover = together(parts, goes);
        const Cells rest = together(parts, chosen & ~goes);
        const bool free =
            std::ranges::any_of(all_ways, [&](Direction way) { return !runs_into(mover, rest, way); });
        if (free && comes_apart(parts, goes) && comes_apart(parts, chosen & ~goes)) return true;
    }
    return false;
}

// Cells dealt out at random: each part grows from a seed into cells beside it.
std::vector<Cells> random_puzzle(std::mt19937& random, std::size_t count) {
    Cells left = block({0, 0, 0}, {3, 3, 2});
    std::vector<Cells> parts(count);
    const auto any_of = [&](const Cells& cells) {
        return *std::next(cells.begin(), static_cast<std::ptrdiff_t>(random() % cells.size()));
    };
    for (Cells& part : parts) {
        const Cell seed = any_of(left);
        left.erase(seed);
        part.insert(seed);
    }
    for (int i = 0; i < 2000 && !left.empty(); ++i) {
        Cells& part = parts[random() % count];
        const Cell next = beside(any_of(part), all_ways[random() % all_ways.size()]);
        if (left.erase(next) > 0) part.insert(next);
    }
    return parts;
}

unsigned bits_of(const PartNumbers& parts) {
    unsigned bits = 0;
    for (const std::size_t part : parts) bits |= 1U << part;
    return bits;
}

// What a motion is said to be free of is not run into, and every part has been there.
void check_plan(const std::vector<Cells>& parts, const TakenApart& apart) {
    for (const Parting& parting : apart.partings) {
        CHECK((bits_of(parting.goes) & bits_of(parting.stays)) == 0);
        CHECK_FALSE(runs_into(together(parts, bits_of(parting.goes)), together(parts, bits_of(parting.stays)),
                              parting.way));
    }
    std::size_t singles = 0;
    std::size_t in_groups = 0;
    for (const PartNumbers& group : apart.locked) in_groups += group.size();
    for (const Parting& parting : apart.partings)
        singles += (parting.goes.size() == 1) + (parting.stays.size() == 1);
    if (!apart.partings.empty()) CHECK(singles + in_groups == parts.size());
}

// Three bars along three axes through one middle, with the notches that let them cross.
std::vector<Cells> two_crossed_bars() {
    const Cells across = block({-3, 0, 0}, {3, 0, 1});
    const Cells along = block({0, -3, 0}, {0, 3, 1});
    const Cells lower = block({0, 0, 0}, {0, 0, 0});
    const Cells upper = block({0, 0, 1}, {0, 0, 1});
    return {less(across, upper), less(along, lower)};
}

// A tail one wide at its neck and three at its end, in a socket that is open upwards; closed: at the top too.
std::vector<Cells> tail_in_socket(bool closed) {
    const Cells tail = more(block({0, 0, 0}, {2, 0, 1}), block({1, 1, 0}, {1, 3, 1}));
    Cells post = block({-1, -1, -1}, {3, 1, closed ? 2 : 1});
    post = less(post, block({0, 0, 0}, {2, 0, 1}));
    post = less(post, block({1, 1, 0}, {1, 1, 1}));
    return {tail, post};
}

}  // namespace

TEST_SUITE("unit/assembly") {
    TEST_CASE("a halved cross comes apart up and down only") {
        const Blocking blocking = blocking_of(two_crossed_bars());
        const std::size_t across = 0;
        const std::size_t along = 1;
        for (const Direction way : all_ways) {
            const bool lifts_off = way == Direction{Axis::tall, true};
            CHECK(blocking.meets(along, across, way) == !lifts_off);
            CHECK(blocking.meets(across, along, -way) == !lifts_off);
        }
    }

    TEST_CASE("a dovetail comes out the open end, and a closed socket locks it") {
        const TakenApart open = take_apart(blocking_of(tail_in_socket(false)));
        REQUIRE(open.partings.size() == 1);
        CHECK(open.partings[0].way == Direction{Axis::tall, true});
        CHECK(open.partings[0].goes == PartNumbers{0});
        const TakenApart closed = take_apart(blocking_of(tail_in_socket(true)));
        CHECK(closed.partings.empty());
        CHECK(closed.locked == std::vector<PartNumbers>{{0, 1}});
    }

    TEST_CASE("a bottom in the grooves of four sides goes out with a side only") {
        // Sides two thick round a space of four by four, a groove one deep at height 1.
        const Cells bottom = block({1, 1, 1}, {6, 6, 1});
        const auto side = [&](const Cell& from, const Cell& to) { return less(block(from, to), bottom); };
        const std::vector<Cells> parts = {bottom, side({0, 0, 0}, {7, 1, 3}), side({0, 6, 0}, {7, 7, 3}),
                                          side({0, 2, 0}, {1, 5, 3}), side({6, 2, 0}, {7, 5, 3})};
        const Blocking blocking = blocking_of(parts);
        const auto is_caught = [&](Direction way) {
            for (std::size_t side_number = 1; side_number < parts.size(); ++side_number) {
                if (blocking.meets(0, side_number, way)) return true;
            }
            return false;
        };
        CHECK(std::ranges::all_of(all_ways, is_caught));
        const TakenApart apart = take_apart(blocking);
        CHECK(apart.locked.empty());
        REQUIRE(apart.partings.size() == 4);
        CHECK(apart.partings[0].goes != PartNumbers{0});
        check_plan(parts, apart);
    }

    TEST_CASE("a lock is told without the parts that only stand by, and with what would open it") {
        std::vector<Cells> parts = tail_in_socket(true);
        parts.push_back(block({-3, -1, -1}, {-2, 1, 1}));  // beside the post
        parts.push_back(block({5, 0, 0}, {6, 0, 0}));
        const Blocking blocking = blocking_of(parts);
        CHECK(smallest_lock(blocking, {0, 1}) == PartNumbers{0, 1});
        // Tied to the post and to each other, the others are in the same lock, and still are not what locks.
        CHECK(smallest_lock(blocking, {0, 1, 2, 3}) == PartNumbers{0, 1});
        // The socket is closed above and below: open at either end it would let the tail out.
        const std::vector<Opening> ends = {
            {0, 1, {Axis::tall, true}}, {0, 1, {Axis::tall, false}}, {2, 1, {Axis::wide, true}}};
        const std::vector<Opening> open = releases(blocking, {0, 1}, ends);
        REQUIRE(open.size() == 2);
        CHECK(open[0].way == Direction{Axis::tall, true});
        CHECK(open[1].way == Direction{Axis::tall, false});
    }

    TEST_CASE("surfaces that slide on each other, and a hair of overlap, are in nobody's way") {
        const auto box = [](double from, double to) {
            Mesh mesh = surface_of(block({0, 0, 0}, {0, 0, 0}));
            for (Triangle& triangle : mesh) {
                for (Point3& corner : triangle.corners) corner[0] = corner[0] == 0 ? from : to;
            }
            return mesh;
        };
        const auto meets_going_deep = [&](double from) {
            return Blocking({box(0, 10), box(from, 20)}).meets(0, 1, {Axis::deep, true});
        };
        CHECK_FALSE(meets_going_deep(10));
        CHECK_FALSE(
            blocking_of({block({0, 0, 0}, {0, 0, 0}), block({1, 1, 1}, {1, 1, 1})})  // corner to corner
                .meets(0, 1, {Axis::tall, true}));
        CHECK_FALSE(meets_going_deep(10 - 1e-9));
        CHECK(meets_going_deep(9.9));
    }

    TEST_CASE("small puzzles come apart exactly where some order and direction of all does it") {
        std::mt19937 random(20261126);
        std::size_t apart_count = 0;
        std::size_t locked_count = 0;
        for (int i = 0; i < 400; ++i) {
            const std::vector<Cells> parts = random_puzzle(random, 2 + random() % 4);
            const TakenApart apart = take_apart(blocking_of(parts));
            const bool possible = comes_apart(parts, (1U << parts.size()) - 1);
            CHECK(apart.locked.empty() == possible);
            check_plan(parts, apart);
            ++(possible ? apart_count : locked_count);
        }
        CHECK(apart_count > 50);
        CHECK(locked_count > 20);
    }

    TEST_CASE("nothing, and one part alone, need no motion") {
        CHECK(take_apart(Blocking({})).partings.empty());
        const TakenApart one = take_apart(blocking_of({block({0, 0, 0}, {1, 1, 1})}));
        CHECK(one.partings.empty());
        CHECK(one.locked.empty());
    }
}
