// Parts, or groups of parts, that touch nothing.
#include <fmt/format.h>
#include <boost/pending/disjoint_sets.hpp>

#include <map>
#include <numeric>

#include "compiler/check/check_data.hpp"
#include "compiler/check/checks.hpp"

namespace rodwright {

namespace {

using Groups = std::map<std::size_t, std::vector<std::size_t>>;  // by one of them, in the order of parts

Groups groups_that_touch(const std::vector<Mesh>& meshes) {
    std::vector<std::size_t> rank(meshes.size());
    std::vector<std::size_t> parent(meshes.size());
    boost::disjoint_sets<std::size_t*, std::size_t*> sets(rank.data(), parent.data());
    for (std::size_t i = 0; i < meshes.size(); ++i) sets.make_set(i);
    // What stops that short of it is reported as a gap.
    const double touching = check_data().fit.gap.widest;
    for (const auto& [a, b] : near_pairs(meshes, touching)) sets.union_set(a, b);
    std::map<std::size_t, std::size_t> first_of;
    Groups groups;
    for (std::size_t i = 0; i < meshes.size(); ++i) {
        const auto [first, is_new] = first_of.emplace(sets.find_set(i), i);
        groups[first->second].push_back(i);
    }
    return groups;
}

// What is placed as a piece of its own may stand free, as a drawer does.
bool in_assembly(const Piece& piece, const std::vector<std::size_t>& group) {
    const AssemblyId assembly = piece.parts[group.front()].assembly;
    if (assembly == AssemblyId::none) return false;
    return std::ranges::all_of(group,
                               [&](std::size_t part) { return piece.parts[part].assembly == assembly; });
}

}  // namespace

void check_loose(const CheckInput& input, Findings& findings) {
    const Groups groups = groups_that_touch(input.meshes);
    const std::vector<std::size_t>* largest = nullptr;
    for (const auto& [first, group] : groups) {
        if (largest == nullptr || group.size() > largest->size()) largest = &group;
    }
    for (const auto& [first, group] : groups) {
        if (&group == largest || in_assembly(input.piece, group)) continue;
        const Part& part = input.piece.parts[first];
        const std::string others = group.size() == 1 ? "" : fmt::format(" and {} more", group.size() - 1);
        findings.diagnostics.add(
            diagnose(Code::loose_part, part.where,
                     fmt::format("`{}`{} touch{} nothing else of the piece", part.name, others,
                                 group.size() == 1 ? "es" : ""))
                .hint("place a face of it by the face that it should meet, and join them"));
    }
}

}  // namespace rodwright
