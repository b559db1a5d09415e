#include "compiler/stock/rough/rough.hpp"

#include <fmt/format.h>

#include "compiler/stock/rough/blanks.hpp"
#include "compiler/stock/rough/panels.hpp"
#include "compiler/stock/rough/rough_part.hpp"

namespace rodwright {
namespace {

bool is_of_sheet(const Piece& piece, const Kind& kind) {
    const Wood* wood = piece.find_wood(kind.wood);
    return wood != nullptr && wood->sheet;
}

Blank sheet_blank(const Kind& kind, KindId id) {
    Blank blank;
    blank.kinds = {id};
    blank.count = static_cast<int>(kind.parts.size());
    blank.size = overall_size(kind);
    blank.sheet = true;
    return blank;
}

void add_blanks(RoughSizes& sizes, const Piece& piece, KindId id, const MillingData& milling) {
    std::vector<Blank> blanks = blanks_of(piece, id, milling);
    const Rational& widest = milling.jointer.widest;
    const bool too_wide = overall_size(piece[id])[Axis::deep] + 2 * milling.allowances.edge > widest;
    const std::string reason = fmt::format(
        "wider than the {} that the jointer takes: glue it up, or flatten it "
        "by other means",
        format_length(widest, piece.style));
    for (Blank& blank : blanks) {
        if (too_wide) blank.reasons.push_back(reason);
        sizes.blanks.push_back(std::move(blank));
    }
    if (too_wide) sizes.panels.push_back(panel_need(piece, id, milling));
}

}  // namespace

RoughSizes rough_sizes(const Piece& piece, const MillingData& milling) {
    RoughSizes sizes;
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        const Kind& kind = piece.kinds[i];
        const KindId id = static_cast<KindId>(i);
        if (is_of_sheet(piece, kind)) {
            sizes.blanks.push_back(sheet_blank(kind, id));
        } else if (kind.glued) {
            sizes.panels.push_back(panel_need(piece, id, milling));
        } else {
            add_blanks(sizes, piece, id, milling);
        }
    }
    return sizes;
}

}  // namespace rodwright
