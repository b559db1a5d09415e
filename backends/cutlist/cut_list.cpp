#include "backends/cutlist/cut_list.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "backends/cutlist/rough_cuts.hpp"
#include "backends/words.hpp"

namespace rodwright {
namespace {

// Mirror images of `kind` and what it mirrors itself, by letter.
std::vector<std::string> handed_notes(const Piece& piece, const Kind& kind, KindId id) {
    std::vector<std::string> notes;
    if (kind.mirror_of) notes.push_back("mirror of " + piece[*kind.mirror_of].letter);
    std::vector<std::string> mates;
    for (const Kind& other : piece.kinds) {
        if (other.mirror_of == id) mates.push_back(other.letter);
    }
    if (!mates.empty()) notes.push_back("handed, its mirror is " + joined(mates));
    return notes;
}

std::vector<std::string> notes_of(const Piece& piece, const Kind& kind, KindId id) {
    std::vector<std::string> notes = handed_notes(piece, kind, id);
    for (std::string& note : shop_notes(piece, kind, piece.style)) notes.push_back(std::move(note));
    if (kind.glued) notes.push_back("glued up from " + glued_up_words(*kind.glued, piece.style));
    for (const Axis axis : {Axis::deep, Axis::tall}) {
        if (kind.overall(axis) == kind.size[axis]) continue;
        notes.push_back(fmt::format("{} visible {}", format_length(kind.size[axis], piece.style),
                                    axis == Axis::deep ? "width" : "thickness"));
    }
    return notes;
}

CutRow make_row(const Piece& piece, KindId id) {
    const Kind& kind = piece[id];
    CutRow row;
    row.kind = id;
    row.letter = kind.letter;
    row.name = kind.name;
    row.count = kind.parts.size();
    for (const Axis axis : all_axes) row.size[axis] = kind.overall(axis);
    if (row.size[Axis::wide] != kind.size[Axis::wide]) row.shoulder_length = kind.size[Axis::wide];
    row.notes = notes_of(piece, kind, id);
    return row;
}

std::size_t wood_rank(const Piece& piece, const std::string& wood) {
    const auto found = std::ranges::find(piece.woods, wood, &Wood::name);
    return static_cast<std::size_t>(found - piece.woods.begin());
}

CutGroup& group_for(CutList& list, const Piece& piece, const Kind& kind, const Rational& thickness) {
    for (CutGroup& group : list.groups) {
        if (group.wood == kind.wood && group.thickness == thickness) return group;
    }
    const auto wood = std::ranges::find(piece.woods, kind.wood, &Wood::name);
    list.groups.push_back(
        {kind.wood, wood_words(piece, kind.wood), wood != piece.woods.end() && wood->sheet, thickness, {}});
    return list.groups.back();
}

void sort_groups(CutList& list, const Piece& piece) {
    std::ranges::stable_sort(list.groups, [&](const CutGroup& a, const CutGroup& b) {
        const std::size_t rank_a = wood_rank(piece, a.wood);
        const std::size_t rank_b = wood_rank(piece, b.wood);
        if (rank_a != rank_b) return rank_a < rank_b;
        if (a.wood != b.wood) return a.wood < b.wood;
        return a.thickness > b.thickness;
    });
}

std::vector<HardwareRow> hardware_of(const Piece& piece) {
    std::vector<HardwareRow> rows;
    for (const JointKind& kind : piece.joint_kinds) {
        for (const Supply& supply : kind.work.supplies) {
            const std::string note = read_out(supply.note, piece.style);
            auto row = std::ranges::find_if(
                rows, [&](const HardwareRow& r) { return r.name == supply.name && r.note == note; });
            if (row == rows.end()) row = rows.insert(rows.end(), {supply.name, note, 0});
            row->count += supply.count * Rational(static_cast<unsigned long>(kind.joints.size()));
        }
    }
    std::ranges::stable_sort(rows, {}, &HardwareRow::name);
    return rows;
}

bool any_rounded(const CutList& list) {
    const auto rounded = [&](const Rational& length) { return !show_length(length, list.style).exact; };
    for (const CutGroup& group : list.groups) {
        for (const CutRow& row : group.rows) {
            if (std::ranges::any_of(row.size.at, rounded)) return true;
            if (row.shoulder_length && rounded(*row.shoulder_length)) return true;
        }
    }
    return false;
}

}  // namespace

CutList make_cut_list(const Piece& piece, const WoodPlan* wood) {
    CutList list;
    list.title = piece.name;
    list.style = piece.style;
    list.parts = piece.parts.size();
    list.kinds = piece.kinds.size();
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        CutRow row = make_row(piece, static_cast<KindId>(i));
        group_for(list, piece, piece.kinds[i], row.size[Axis::tall]).rows.push_back(std::move(row));
    }
    sort_groups(list, piece);
    list.hardware = hardware_of(piece);
    if (wood != nullptr) add_wood_plan(list, piece, *wood);
    list.rounded = any_rounded(list);
    return list;
}

std::string group_title(const CutGroup& group, const LengthStyle& style) {
    return fmt::format("{}, {} thick", group.words, format_length(group.thickness, style));
}

}  // namespace rodwright
