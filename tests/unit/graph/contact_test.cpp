#include "compiler/graph/contact.hpp"

#include <doctest/doctest.h>

using namespace rodwright;

TEST_SUITE_BEGIN("unit/graph");

namespace {

Box box(long x, long y, long z, long wide, long deep, long tall) {
    return {{{x, y, z}}, {{x + wide, y + deep, z + tall}}};
}

const Box post = box(0, 0, 0, 40, 40, 300);

}  // namespace

TEST_CASE("parts meet in a rectangle") {
    const Box rail = box(40, 10, 200, 500, 20, 60);
    const std::vector<Contact> found = contacts(rail, post, {}, {});
    REQUIRE(found.size() == 1);
    CHECK(found.front().first == Face::left);
    CHECK(found.front().second == Face::right);
    CHECK(found.front().rectangle == Box{{{40, 10, 200}}, {{40, 30, 260}}});
}

TEST_CASE("the rectangle is what both share") {
    const Box rail = box(40, 30, 280, 500, 20, 60);  // past the back and the top of the post
    const std::vector<Contact> found = contacts(post, rail, {}, {});
    REQUIRE(found.size() == 1);
    CHECK(found.front().first == Face::right);
    CHECK(found.front().rectangle == Box{{{40, 30, 280}}, {{40, 40, 300}}});
}

TEST_CASE("faces that are asked for must be those that meet") {
    const Box rail = box(40, 10, 200, 500, 20, 60);
    CHECK(contacts(rail, post, Face::left, {}).size() == 1);
    CHECK(contacts(rail, post, Face::left, Face::right).size() == 1);
    CHECK(contacts(rail, post, Face::right, {}).empty());
    CHECK(contacts(rail, post, Face::left, Face::top).empty());
}

TEST_CASE("edges, corners, gaps and overlaps are no contact") {
    CHECK(contacts(box(40, 40, 0, 9, 9, 9), post, {}, {}).empty());
    CHECK(contacts(box(40, 40, 300, 9, 9, 9), post, {}, {}).empty());
    CHECK(contacts(box(41, 0, 0, 9, 9, 9), post, {}, {}).empty());
    CHECK(contacts(box(39, 0, 0, 9, 9, 9), post, {}, {}).empty());
    CHECK(contacts(post, post, {}, {}).empty());
}

TEST_CASE("a gap is along the axis on which the parts are furthest apart") {
    const Gap apart = gap_between(post, box(50, 100, 0, 9, 9, 9));
    CHECK(apart.axis == Axis::deep);
    CHECK(apart.amount == 60);
    // Either way round, and with the nearer part behind the other.
    CHECK(gap_between(box(50, 100, 0, 9, 9, 9), post).amount == 60);
}

TEST_CASE("parts that run into each other have a gap below zero: the shortest way out") {
    const Gap into = gap_between(post, box(35, 0, 0, 100, 40, 300));
    CHECK(into.axis == Axis::wide);
    CHECK(into.amount == -5);
}

TEST_CASE("from a face the gap is straight ahead") {
    const Box rail = box(43, 10, 200, 500, 20, 60);
    CHECK(gap_between(rail, Face::left, post).amount == 3);
    CHECK(gap_between(rail, Face::left, post).axis == Axis::wide);
    CHECK(gap_between(box(38, 10, 200, 500, 20, 60), Face::left, post).amount == -2);
}

TEST_CASE("beside the face's way the gap is what keeps them apart") {
    const Gap gap = gap_between(box(40, 50, 200, 500, 20, 60), Face::left, post);
    CHECK(gap.axis == Axis::deep);
    CHECK(gap.amount == 10);
}

TEST_SUITE_END();
