#include "compiler/stock/rough/rough.hpp"

#include <fmt/format.h>

#include "compiler/stock/rough/blanks.hpp"
#include "compiler/stock/rough/panels.hpp"
#include "compiler/stock/rough/rough_part.hpp"

namespace rodwright {
namespace {

Blank sheet_blank(const Kind& kind, KindId id) {
    Blank blank;
    blank.kinds = {id};
    blank.count = static_cast<int>(kind.parts.size());
    blank.size = cut_size(kind);
    blank.sheet = true;
    return blank;
}

void add_blanks(RoughSizes& sizes, const Piece& piece, KindId id, const MillingData& milling) {
    std::vector<Blank> blanks = blanks_of(piece, id, milling);
    const Rational& widest = milling.jointer.widest;
    const bool too_wide = cut_size(piece[id])[Axis::deep] + 2 * milling.allowances.edge > widest;
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
        if (piece.is_of_sheet(kind)) {
            sizes.blanks.push_back(sheet_blank(kind, id));
        } else if (kind.glued) {
            sizes.panels.push_back(panel_need(piece, id, milling));
        } else {
            add_blanks(sizes, piece, id, milling);
        }
    }
    std::erase_if(sizes.blanks, [](const Blank& blank) { return blank.count == 0 || blank.kinds.empty(); });
    std::erase_if(sizes.panels, [](const PanelNeed& panel) { return panel.count == 0; });
    return sizes;
}

}  // namespace rodwright
