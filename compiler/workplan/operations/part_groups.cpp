#include "compiler/workplan/operations/part_groups.hpp"

#include <algorithm>
#include <map>

namespace rodwright {
namespace {

PartSet members_of_joints(const Piece& piece, bool glued_only) {
    PartSet parts(piece.parts.size());
    for (const Joint& joint : piece.joints) {
        const JointKind& kind = piece[joint.kind];
        if (kind.fastening || (glued_only && kind.glue.empty())) continue;
        for (const JointMember& member : joint.members) parts.set(static_cast<std::size_t>(member.part));
    }
    return parts;
}

template <typename Wanted>
PartSet parts_of_kinds(const Piece& piece, Wanted wanted) {
    PartSet parts(piece.parts.size());
    for (const Kind& kind : piece.kinds) {
        if (!wanted(kind)) continue;
        for (const PartId part : kind.parts) parts.set(static_cast<std::size_t>(part));
    }
    return parts;
}

}  // namespace

PartSet parts_for(const Piece& piece, AppliesTo applies) {
    switch (applies) {
        case AppliesTo::all:
            return parts_of_kinds(piece, [](const Kind&) { return true; });
        case AppliesTo::boards:
            return parts_of_kinds(piece, [&](const Kind& k) { return !piece.is_of_sheet(k) && !k.glued; });
        case AppliesTo::panels:
        case AppliesTo::staves:
            return parts_of_kinds(piece, [](const Kind& k) { return k.glued.has_value(); });
        case AppliesTo::sheets:
            return parts_of_kinds(piece, [&](const Kind& k) { return piece.is_of_sheet(k); });
        case AppliesTo::joined:
            return members_of_joints(piece, false);
        case AppliesTo::glued:
            return members_of_joints(piece, true);
        case AppliesTo::finish:
            return parts_of_kinds(piece, [&](const Kind&) { return !piece.finishes.empty(); });
        case AppliesTo::taken:
            return parts_of_kinds(piece, [](const Kind& k) {
                return std::ranges::any_of(k.taken_over, [](const auto& over) { return over.has_value(); });
            });
    }
    return {};
}

std::vector<PartId> part_list(const PartSet& parts) {
    std::vector<PartId> list;
    for (std::size_t part = parts.find_first(); part != PartSet::npos; part = parts.find_next(part))
        list.push_back(static_cast<PartId>(part));
    return list;
}

std::vector<WorkedKind> kinds_of(const Piece& piece, const PartSet& parts) {
    std::map<KindId, std::size_t> counts;
    for (const PartId part : part_list(parts)) ++counts[piece[part].kind];
    std::vector<WorkedKind> kinds;
    for (const auto& [kind, count] : counts) kinds.push_back({kind, count});
    return kinds;
}

}  // namespace rodwright
