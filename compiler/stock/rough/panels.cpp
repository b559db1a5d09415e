#include "compiler/stock/rough/panels.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/rough/rough_part.hpp"

namespace rodwright {
namespace {

constexpr int most_staves = 1000;

// The whole number of staves nearest to `staves` between the bounds.
int within(const Rational& staves, int least, int most) {
    return static_cast<int>(std::clamp(staves, Rational(least), Rational(most)).get_d());
}

class Panel {
  public:
    Panel(const Piece& piece, KindId id, const MillingData& milling)
        : piece_(piece), kind_(piece[id]), milling_(milling) {
        need_.kind = id;
        need_.count = static_cast<int>(kind_.parts.size());
    }

    PanelNeed make() && {
        const Vector finished = cut_size(kind_);
        set_staves(kind_.glued.value_or(GluedUp{}));
        need_.suggested = !kind_.glued;
        set_length(finished[Axis::wide]);
        set_width(finished[Axis::deep]);
        need_.size[Axis::tall] = finished[Axis::tall] + milling_.allowances.faces;
        need_.thickness_class = choose_class(finished[Axis::tall], piece_.style, milling_, need_.reasons);
        return std::move(need_);
    }

  private:
    std::string show(const Rational& length) const { return format_length(length, piece_.style); }

    void set_staves(const GluedUp& glued) {
        if (glued.count) need_.staves = static_cast<int>(*glued.count);
        need_.narrowest = glued.narrowest.value_or(milling_.panels.narrowest_stave);
        need_.widest = glued.widest.value_or(milling_.panels.widest_stave);
        need_.alternating = glued.alternating;
    }

    void set_length(const Rational& finished) {
        Rational more = milling_.panels.length;
        const Rational sniped = 2 * milling_.planer.snipe;
        std::string why = "to square the glued panel";
        if (milling_.planer.snipes && sniped > more) {
            more = sniped;
            why = "for ends that the planer makes too thin";
        }
        need_.size[Axis::wide] = finished + more;
        std::string text = fmt::format("length: {} + {} {}", show(finished), show(more), why);
        if (need_.size[Axis::wide] < milling_.shortest_milled()) {
            need_.size[Axis::wide] = milling_.shortest_milled();
            text += fmt::format("; made {} long, the shortest that the machines take",
                                show(milling_.shortest_milled()));
        }
        need_.reasons.push_back(std::move(text));
    }

    void set_width(const Rational& finished) {
        need_.size[Axis::deep] = finished + milling_.panels.width;
        need_.reasons.push_back(fmt::format(
            "width: {} + {} to trim the glued panel; {} more at each edge of a stave for jointing",
            show(finished), show(milling_.panels.width), show(milling_.panels.glued_edge)));
        if (need_.size[Axis::deep] > milling_.planer.widest) {
            need_.reasons.push_back(
                fmt::format("wider than the {} that the planer takes: level it by hand plane "
                            "or sanding once it is glued",
                            show(milling_.planer.widest)));
        }
    }

    const Piece& piece_;
    const Kind& kind_;
    const MillingData& milling_;
    PanelNeed need_;
};

}  // namespace

PanelNeed panel_need(const Piece& piece, KindId id, const MillingData& milling) {
    return Panel(piece, id, milling).make();
}

StaveCounts stave_counts(const PanelNeed& panel) {
    if (panel.staves) return {*panel.staves, *panel.staves};
    const Rational& width = panel.size[Axis::deep];
    const int fewest = within(ceil(width / panel.widest), 1, most_staves);
    return {fewest, within(floor(width / panel.narrowest), fewest, most_staves)};
}

Rational sawn_stave_width(const PanelNeed& panel, int staves, const PanelLimits& limits) {
    return panel.size[Axis::deep] / staves + 2 * limits.glued_edge;
}

}  // namespace rodwright
