// Hidden-line removal of boxes, many of them touching or flush, against arithmetic on rectangles.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

struct Block {
    std::array<int, 3> low;
    std::array<int, 3> high;
};

// Small whole numbers, so that faces and edges often fall together.
std::vector<Block> random_blocks(std::mt19937& random, int count) {
    const auto below = [&](unsigned bound) { return static_cast<int>(random() % bound); };
    std::vector<Block> blocks;
    for (int i = 0; i < count; ++i) {
        Block block{};
        for (std::size_t axis = 0; axis < 3; ++axis) {
            block.low[axis] = below(8);
            block.high[axis] = block.low[axis] + 1 + below(4);
        }
        blocks.push_back(block);
    }
    return blocks;
}

std::vector<PlacedSolid> solids_of(const std::vector<Block>& blocks) {
    std::vector<PlacedSolid> placed;
    for (const Block& block : blocks) {
        std::array<int, 3> size{};
        for (std::size_t i = 0; i < 3; ++i) size[i] = block.high[i] - block.low[i];
        PlacedSolid each{
            build(kind_of(size[0], size[1], size[2])), {}, static_cast<std::uint32_t>(placed.size())};
        each.pose.move = {double(block.low[0]), double(block.low[1]), double(block.low[2])};
        placed.push_back(each);
    }
    return placed;
}

// Seen from the front: is there an edge of a block through (x, z), and one that nothing nearer covers?
struct Seen {
    bool edge = false;
    bool visible = false;
};

bool on_outline(const Block& block, double x, double z) {
    const bool in_x = x >= block.low[0] && x <= block.high[0];
    const bool in_z = z >= block.low[2] && z <= block.high[2];
    const bool at_x = x == block.low[0] || x == block.high[0];
    const bool at_z = z == block.low[2] || z == block.high[2];
    return in_x && in_z && (at_x || at_z);
}

bool covers(const Block& block, double x, double z, int depth) {
    return x > block.low[0] && x < block.high[0] && z > block.low[2] && z < block.high[2] &&
           block.low[1] < depth;
}

Seen expected(const std::vector<Block>& blocks, double x, double z) {
    Seen seen;
    for (const Block& block : blocks) {
        if (!on_outline(block, x, z)) continue;
        seen.edge = true;
        const auto hides = [&](const Block& other) { return covers(other, x, z, block.low[1]); };
        if (std::none_of(blocks.begin(), blocks.end(), hides)) seen.visible = true;
    }
    return seen;
}

bool passes(const ViewLine& line, double x, double z) {
    const auto [x0, z0] = line.points[0];
    const auto [x1, z1] = line.points[1];
    const double slack = 1e-6;
    return x > std::min(x0, x1) - slack && x < std::max(x0, x1) + slack && z > std::min(z0, z1) - slack &&
           z < std::max(z0, z1) + slack;
}

Seen found(const std::vector<ViewLine>& lines, double x, double z) {
    Seen seen;
    for (const ViewLine& line : lines) {
        if (!passes(line, x, z)) continue;
        seen.edge = true;
        seen.visible = seen.visible || line.visible;
    }
    return seen;
}

// Half way between whole numbers along each line of the grid no two edges cross.
int disagreements(const std::vector<Block>& blocks, const std::vector<ViewLine>& lines) {
    int wrong = 0;
    for (int i = 0; i <= 12; ++i) {
        for (int j = 0; j < 12; ++j) {
            for (const auto& [x, z] : {std::pair{double(i), j + 0.5}, std::pair{j + 0.5, double(i)}}) {
                const Seen want = expected(blocks, x, z);
                const Seen have = found(lines, x, z);
                if (want.edge != have.edge || want.visible != have.visible) ++wrong;
            }
        }
    }
    return wrong;
}

}  // namespace

TEST_SUITE("unit/solid") {
    TEST_CASE("views of random blocks agree with arithmetic on rectangles") {
        std::mt19937 random(20240611);
        for (int round = 0; round < 40; ++round) {
            const std::vector<Block> blocks = random_blocks(random, 2 + round % 8);
            const auto lines = kernel().view(solids_of(blocks), {{0, -1, 0}, {0, 0, 1}}, true);
            CAPTURE(round);
            CHECK(disagreements(blocks, lines) == 0);
        }
    }
}
