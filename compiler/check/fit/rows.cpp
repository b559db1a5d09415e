// Rows that are not in the middle, by so little that it looks like a mistake.
#include <fmt/format.h>

#include <map>
#include <optional>

#include "compiler/check/checks.hpp"
#include "compiler/check/words.hpp"

namespace rodwright {

namespace {

struct RowOfParts {
    std::vector<const Part*> parts;  // in the order of their numbers
};

// Written copies of the same name and assembly; a part that is no row has one.
std::vector<RowOfParts> rows_of(const Piece& piece) {
    std::map<std::pair<AssemblyId, std::string>, RowOfParts> rows;
    std::vector<RowOfParts> found;
    for (const Part& part : piece.parts) {
        const bool numbered = part.name.find('[') != std::string::npos &&
                              part.name.find_first_of("0123456789", part.name.find('[')) != std::string::npos;
        // Copies of a handed row are mirrored about the middle, and in it by that.
        const bool handed =
            part.name.find_first_of("abcdefghijklmnopqrstuvwxyz", part.name.find('[')) != std::string::npos;
        if (numbered && !handed) rows[{part.assembly, part.declared}].parts.push_back(&part);
    }
    for (auto& [name, row] : rows) {
        if (row.parts.size() >= 2) found.push_back(std::move(row));
    }
    return found;
}

// The axis along which the second stands beside the first.
std::optional<Axis> axis_of_row(const RowOfParts& row) {
    for (const Axis axis : all_axes) {
        if (row.parts[1]->body.low[axis] != row.parts[0]->body.low[axis]) return axis;
    }
    return std::nullopt;
}

const Box& around(const Piece& piece, AssemblyId assembly) {
    return assembly == AssemblyId::none ? piece.box
                                        : piece.assemblies[static_cast<std::size_t>(assembly)].box;
}

void look_at_row(const Piece& piece, const RowOfParts& row, Findings& findings) {
    const std::optional<Axis> axis = axis_of_row(row);
    // Shelves and drawers are graduated as one likes.
    if (!axis || *axis == Axis::tall) return;
    const Part& first = *row.parts.front();
    const Part& last = *row.parts.back();
    const Box& room = around(piece, first.assembly);
    const Rational before = first.body.low[*axis] - room.low[*axis];
    const Rational behind = room.high[*axis] - last.body.high[*axis];
    const Rational off = abs(Rational(before - behind)) / 2;
    const Rational gap = row.parts[1]->body.low[*axis] - first.body.high[*axis];
    if (off == 0 || off > gap) return;
    findings.diagnostics.add(
        diagnose(Code::uneven_row, first.where,
                 fmt::format("the row of `{}` is {} off the middle {}: {} before it and {} behind",
                             first.declared, about(off.get_d(), piece.style), along_words(*axis),
                             about(before.get_d(), piece.style), about(behind.get_d(), piece.style)))
            .hint("lay it out between two faces that are as far from the middle"));
}

}  // namespace

void check_rows(const CheckInput& input, Findings& findings) {
    for (const RowOfParts& row : rows_of(input.piece)) look_at_row(input.piece, row, findings);
}

}  // namespace rodwright
