// Parts made of unit cubes, as sets of cells and as surfaces.
#pragma once

#include <set>

#include "compiler/assembly/blocking.hpp"

namespace rodwright::testing {

using Cell = std::array<int, 3>;
using Cells = std::set<Cell>;

inline Cell beside(Cell cell, Direction way) {
    cell[static_cast<std::size_t>(way.axis)] += way.positive ? 1 : -1;
    return cell;
}

// The face of a cell that looks that way, as two triangles.
inline void add_face(Mesh& mesh, const Cell& cell, Direction way) {
    const auto axis = static_cast<std::size_t>(way.axis);
    const std::size_t u = (axis + 1) % 3;
    const std::size_t v = (axis + 2) % 3;
    Point3 corner{};
    for (std::size_t i = 0; i < 3; ++i) corner[i] = cell[i];
    if (way.positive) corner[axis] += 1;
    std::array<Point3, 4> corners = {corner, corner, corner, corner};
    corners[1][u] += 1;
    corners[2][u] += 1;
    corners[2][v] += 1;
    corners[3][v] += 1;
    Point3 normal{};
    normal[axis] = way.positive ? 1 : -1;
    mesh.push_back({{corners[0], corners[1], corners[2]}, normal, 0});
    mesh.push_back({{corners[0], corners[2], corners[3]}, normal, 0});
}

inline Mesh surface_of(const Cells& cells) {
    Mesh mesh;
    for (const Cell& cell : cells) {
        for (const Direction way : all_ways) {
            if (!cells.contains(beside(cell, way))) add_face(mesh, cell, way);
        }
    }
    return mesh;
}

inline Blocking blocking_of(const std::vector<Cells>& parts) {
    std::vector<Mesh> meshes;
    for (const Cells& cells : parts) meshes.push_back(surface_of(cells));
    return Blocking(meshes);
}

// A block from one cell to another, both in it.
inline Cells block(const Cell& from, const Cell& to) {
    Cells cells;
    for (int x = from[0]; x <= to[0]; ++x) {
        for (int y = from[1]; y <= to[1]; ++y) {
            for (int z = from[2]; z <= to[2]; ++z) cells.insert({x, y, z});
        }
    }
    return cells;
}

inline Cells less(Cells cells, const Cells& gone) {
    for (const Cell& cell : gone) cells.erase(cell);
    return cells;
}

inline Cells more(Cells cells, const Cells& others) {
    cells.insert(others.begin(), others.end());
    return cells;
}

}  // namespace rodwright::testing
