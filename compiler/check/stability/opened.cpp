#include "compiler/check/stability/opened.hpp"

#include "compiler/check/stability/weight.hpp"

namespace rodwright {
namespace {

const Assembly* assembly_of(const Piece& piece, AssemblyId id) {
    return id == AssemblyId::none ? nullptr : &piece.assemblies[static_cast<std::size_t>(id)];
}

// By how much what is in the assembly comes to the front, with all that opens around it.
double shift_of(const Piece& piece, AssemblyId id) {
    double shift = 0;
    for (const Assembly* each = assembly_of(piece, id); each != nullptr;
         each = assembly_of(piece, each->parent)) {
        if (each->opens) shift += each->opens->get_d();
    }
    return shift;
}

bool is_in(const Piece& piece, AssemblyId id, AssemblyId around) {
    while (id != around && id != AssemblyId::none) id = assembly_of(piece, id)->parent;
    return id == around;
}

// A weight, N, more in it at that point.
void add_weight(Standing& standing, double weight, const Point3& at) {
    const double sum = standing.weight + weight;
    for (std::size_t i = 0; i < 3; ++i)
        standing.centre[i] = (standing.centre[i] * standing.weight + at[i] * weight) / sum;
    standing.weight = sum;
}

double volume_of(const Box& box) {
    double volume = 1;
    for (const Axis axis : all_axes) volume *= box.size(axis).get_d();
    return volume;
}

Point3 middle_of(const Box& box) {
    Point3 middle{};
    for (const Axis axis : all_axes)
        middle[static_cast<std::size_t>(axis)] = Rational((box.low[axis] + box.high[axis]) / 2).get_d();
    return middle;
}

}  // namespace

Opened opened(const Piece& piece, const std::vector<Mesh>& meshes, const Standing& closed, double floor,
              double contents) {
    constexpr double cubic_metre = 1e9;  // mm^3
    const std::vector<PartWeight> weights = part_weights(piece, meshes);
    Opened out{closed, {}, {}};
    double moved = 0;  // weight times way
    for (std::size_t i = 0; i < weights.size(); ++i)
        moved += weights[i].kilograms * standard_gravity * shift_of(piece, piece.parts[i].assembly);
    out.empty.centre[1] -= moved / closed.weight;
    out.full = out.empty;
    for (std::size_t i = 0; i < piece.assemblies.size(); ++i) {
        const Assembly& drawer = piece.assemblies[i];
        if (!drawer.opens) continue;
        const auto id = static_cast<AssemblyId>(i);
        Point3 middle = middle_of(drawer.box);
        middle[1] -= shift_of(piece, id);
        middle[2] -= floor;
        double room = volume_of(drawer.box);
        for (std::size_t part = 0; part < weights.size(); ++part) {
            if (is_in(piece, piece.parts[part].assembly, id)) room -= weights[part].volume;
        }
        add_weight(out.full, contents * room / cubic_metre * standard_gravity, middle);
        out.fronts.push_back({drawer.name,
                              {middle[0], drawer.box.low[Axis::deep].get_d() - shift_of(piece, id)},
                              drawer.box.high[Axis::tall].get_d() - floor,
                              drawer.where});
    }
    return out;
}

}  // namespace rodwright
