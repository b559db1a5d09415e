#include "compiler/stock/rough/rough_part.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {
namespace {

bool is_turned(const Kind& kind) {
    const auto on_lathe = [](const StepTemplate& step) { return step.machine == "lathe"; };
    return std::ranges::any_of(
        kind.shapes, [&](const ShapeUse& use) { return std::ranges::any_of(use.work.steps, on_lathe); });
}

void set_ends(RoughPart& part, const MillingData& milling, bool turned) {
    part.end = milling.allowances.end;
    part.end_reason = "to square it";
    if (turned && milling.allowances.turning_length > 2 * part.end) {
        part.end = milling.allowances.turning_length / 2;
        part.end_reason = "for the lathe's centres";
    }
    if (milling.planer.snipes && milling.planer.snipe > part.end) {
        part.end = milling.planer.snipe;
        part.end_reason = "that the planer makes too thin";
    }
}

}  // namespace

Vector cut_size(const Kind& kind) {
    return {{kind.cut(Axis::wide), kind.cut(Axis::deep), kind.cut(Axis::tall)}};
}

std::string choose_class(const Rational& finished, const LengthStyle& style, const MillingData& milling,
                         std::vector<std::string>& reasons) {
    const auto show = [&](const Rational& length) { return format_length(length, style); };
    if (finished < milling.planer.thinnest) {
        reasons.push_back(
            fmt::format("thinner than the {} that the planer takes: plane it on a carrier board",
                        show(milling.planer.thinnest)));
    }
    const std::string sum = fmt::format("thickness: {} + {} to clean up both faces", show(finished),
                                        show(milling.allowances.faces));
    const ThicknessClass* chosen = milling.class_for(finished);
    if (chosen == nullptr) {
        reasons.push_back(sum + "; no class is so thick: glue it up in layers");
        return {};
    }
    reasons.push_back(fmt::format("{}; a flat {} board gives {}", sum, chosen->name, show(chosen->surfaced)));
    return chosen->name;
}

RoughPart rough_part(const Kind& kind, const LengthStyle& style, const MillingData& milling) {
    const auto show = [&](const Rational& length) { return format_length(length, style); };
    RoughPart part;
    part.finished = cut_size(kind);
    for (const Axis axis : all_axes) {
        const std::optional<Rational>& over = kind.taken_over[static_cast<std::size_t>(axis)];
        if (over)
            part.reasons.push_back(fmt::format("{}: {} over the drawing, as it is marked from the work",
                                               size_name(axis), show(*over)));
    }
    const bool turned = is_turned(kind);
    if (turned) {
        const Rational& more = milling.allowances.turning_width;
        part.finished[Axis::deep] += more;
        part.finished[Axis::tall] += more;
        part.reasons.push_back(fmt::format("turned from a square {} larger than its diameter", show(more)));
    }
    set_ends(part, milling, turned);
    const Rational& edge = milling.allowances.edge;
    part.width = part.finished[Axis::deep] + 2 * edge;
    part.reasons.push_back(fmt::format("width: {} + {} at each edge for jointing and ripping",
                                       show(part.finished[Axis::deep]), show(edge)));
    part.thickness = part.finished[Axis::tall] + milling.allowances.faces;
    part.thickness_class = choose_class(part.finished[Axis::tall], style, milling, part.reasons);
    return part;
}

}  // namespace rodwright
