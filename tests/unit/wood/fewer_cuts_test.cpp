#include "compiler/stock/plan/fewer_cuts.hpp"

#include <doctest/doctest.h>

using namespace rodwright;
using cutting::CutNode;
using cutting::CutTree;

namespace {

constexpr int none = CutNode::none;

CutNode part(int index, int x, int y, int length, int width) {
    CutNode node;
    node.kind = CutNode::Kind::part;
    node.part = index;
    node.area = {{{x, y}}, {{length, width}}};
    return node;
}

CutNode waste(int x, int y, int length, int width) {
    CutNode node;
    node.area = {{{x, y}}, {{length, width}}};
    return node;
}

CutNode cut(cutting::Axis axis, int position, int first, int second, int x, int y, int length, int width) {
    CutNode node = waste(x, y, length, width);
    node.kind = CutNode::Kind::cut;
    node.axis = axis;
    node.position = position;
    node.first = first;
    node.second = second;
    return node;
}

std::vector<cutting::Rectangle> parts_of(const CutTree& tree) {
    std::vector<cutting::Rectangle> areas;
    for (const CutNode& node : tree.nodes) {
        if (node.kind == CutNode::Kind::part) areas.push_back(node.area);
    }
    return areas;
}

std::ptrdiff_t cuts_of(const CutTree& tree) {
    return std::ranges::count(tree.nodes, CutNode::Kind::cut, &CutNode::kind);
}

// A board of 100 x 20, kerf 1: a strip of 14 is ripped off and crosscut in two of 40, each of which is ripped
// to 12; the rest, 5 wide, gives one of 90.
CutTree board() {
    CutTree tree;
    tree.nodes = {cut(cutting::Axis::width, 14, 1, 9, 0, 0, 100, 20),
                  cut(cutting::Axis::length, 40, 2, 5, 0, 0, 100, 14),
                  cut(cutting::Axis::width, 12, 3, 4, 0, 0, 40, 14),
                  part(0, 0, 0, 40, 12),
                  waste(0, 13, 40, 1),
                  cut(cutting::Axis::length, 81, 6, 8, 41, 0, 59, 14),
                  cut(cutting::Axis::width, 12, 7, none, 41, 0, 40, 14),
                  part(0, 41, 0, 40, 12),
                  waste(82, 0, 18, 14),
                  cut(cutting::Axis::length, 90, 10, 11, 0, 15, 100, 5),
                  part(1, 0, 15, 90, 5),
                  waste(91, 15, 9, 5)};
    return tree;
}

cutting::Problem problem(const std::vector<cutting::Defect>& defects) {
    cutting::Problem result;
    result.stock = {{{{100, 20}}, 1, 1, defects}};
    result.kerf = {{1, 1}};
    result.least_useful = {{20, 20}};
    return result;
}

}  // namespace

TEST_SUITE("unit/wood") {
    TEST_CASE("a strip whose pieces are all trimmed to one width is trimmed once, after the others") {
        const CutTree better = with_fewer_cuts(problem({}), board());
        // Rip 5, rip 12 of the rest; crosscut 90; crosscut 40 twice: five cuts for the six before.
        CHECK(cuts_of(board()) == 6);
        CHECK(cuts_of(better) == 5);
        const std::vector<cutting::Rectangle> parts = parts_of(better);
        REQUIRE(parts.size() == 3);
        CHECK(parts[0] == cutting::Rectangle{{{0, 0}}, {{90, 5}}});
        CHECK(parts[1] == cutting::Rectangle{{{0, 6}}, {{40, 12}}});
        CHECK(parts[2] == cutting::Rectangle{{{41, 6}}, {{40, 12}}});
    }

    TEST_CASE("what is left in large pieces is not cut up for fewer cuts") {
        cutting::Problem large = problem({});
        // The waste of the strip, 18 x 14, is an offcut; trimmed first it would be 18 x 12.
        large.least_useful = {{15, 13}};
        CHECK(cuts_of(with_fewer_cuts(large, board())) == 6);
    }

    TEST_CASE("a board whose pieces are all trimmed to one width is ripped once") {
        CutTree tree;
        tree.nodes = {cut(cutting::Axis::length, 49, 1, 4, 0, 0, 100, 20),
                      cut(cutting::Axis::width, 12, 2, 3, 0, 0, 49, 20),
                      part(0, 0, 0, 49, 12),
                      waste(0, 13, 49, 7),
                      cut(cutting::Axis::width, 12, 5, 6, 50, 0, 50, 20),
                      part(1, 50, 0, 50, 12),
                      waste(50, 13, 50, 7)};
        const CutTree better = with_fewer_cuts(problem({}), tree);
        CHECK(cuts_of(better) == 2);
        CHECK(parts_of(better) == parts_of(tree));
        CHECK(cuts_of(with_fewer_cuts(problem({{{{{40, 15}}, {{5, 5}}}}}), tree)) == 3);
    }

    // 40 | 3 | 16 with a knot | 38: cut behind the knot, before it, and the part from the waste before it.
    TEST_CASE("waste beside waste is one piece of waste, also round a defect") {
        CutTree tree;
        tree.nodes = {cut(cutting::Axis::length, 61, 1, 6, 0, 0, 100, 20),
                      cut(cutting::Axis::length, 44, 2, 5, 0, 0, 61, 20),
                      cut(cutting::Axis::length, 40, 3, 4, 0, 0, 44, 20),
                      part(0, 0, 0, 40, 20),
                      waste(41, 0, 3, 20),
                      waste(45, 0, 16, 20),
                      part(1, 62, 0, 38, 20)};
        const CutTree better = with_fewer_cuts(problem({{{{{46, 2}}, {{5, 5}}}}}), tree);
        CHECK(cuts_of(better) == 2);
        CHECK(parts_of(better) == parts_of(tree));
        const auto left = std::ranges::find(better.nodes, CutNode::Kind::waste, &CutNode::kind);
        REQUIRE(left != better.nodes.end());
        CHECK(left->area == cutting::Rectangle{{{41, 0}}, {{20, 20}}});
    }

    TEST_CASE("where there is a defect nothing moves") {
        const CutTree same = with_fewer_cuts(problem({{{{{95, 0}}, {{5, 5}}}}}), board());
        CHECK(parts_of(same) == parts_of(board()));
        CHECK(cuts_of(same) == cuts_of(board()));
    }
}
