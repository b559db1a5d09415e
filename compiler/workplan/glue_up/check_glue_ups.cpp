#include "compiler/workplan/glue_up/check_glue_ups.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/words.hpp"
#include "compiler/workplan/duration.hpp"

namespace rodwright {
namespace {

// The glue that stays open shortest of those that stay open long enough.
const Glue* slower_glue(const Curing& curing, Seconds needed) {
    const Glue* best = nullptr;
    for (const auto& [name, glue] : curing.glues) {
        if (glue.open < needed) continue;
        if (best == nullptr || glue.open < best->open) best = &glue;
    }
    return best;
}

void check_open_time(const Piece& piece, const GlueUp& glue_up, const Curing& curing,
                     Diagnostics& diagnostics) {
    const Seconds open = static_cast<Seconds>(curing.glue.open.get_d());
    if (glue_up.open_needed <= open) return;
    const Glue* slower = slower_glue(curing, glue_up.open_needed);
    Diagnostic found =
        diagnose(Code::glue_too_fast, piece[glue_up.motions.back().goes.front()].where,
                 fmt::format("{} have to be closed at once, which takes {}; {} stays open for {}",
                             counted(glue_up.motions.back().glued.size(), "joint"),
                             duration_words(glue_up.open_needed), plain_words(curing.glue.name),
                             duration_words(open)));
    found.help = slower == nullptr ? "let fewer joints close at once"
                                   : fmt::format("a slower glue gives the time: {} stays open for {}",
                                                 plain_words(slower->name),
                                                 duration_words(static_cast<Seconds>(slower->open.get_d())));
    diagnostics.add(std::move(found));
}

int clamps_of(const Shop& shop, const Rational& reach) {
    int count = 0;
    for (const ClampStock& clamps : shop.clamps()) count += clamps.length >= reach ? clamps.count : 0;
    return count;
}

void check_clamps(const Piece& piece, const GlueUp& glue_up, const Shop& shop, Diagnostics& diagnostics) {
    if (shop.clamps().empty()) return;  // not known
    for (const ClampUse& needed : glue_up.clamps) {
        const int has = clamps_of(shop, needed.reach);
        if (has >= needed.count) continue;
        diagnostics.add(
            diagnose(Code::too_few_clamps, piece[glue_up.motions.back().goes.front()].where,
                     fmt::format("this glue-up takes {} with a reach of {}; the shop has {} of that length",
                                 counted(static_cast<std::size_t>(needed.count), "clamp"),
                                 format_length(needed.reach, piece.style), has))
                .hint("borrow some, join two end to end, or draw the joints up with pegs or wedges"));
    }
}

}  // namespace

void check_glue_ups(const Piece& piece, const std::vector<GlueUp>& glue_ups, const WorkData& data,
                    Diagnostics& diagnostics) {
    for (const GlueUp& glue_up : glue_ups) {
        if (glue_up.motions.empty() || glue_up.motions.back().goes.empty()) continue;
        check_open_time(piece, glue_up, data.curing, diagnostics);
        check_clamps(piece, glue_up, data.shop, diagnostics);
    }
}

}  // namespace rodwright
