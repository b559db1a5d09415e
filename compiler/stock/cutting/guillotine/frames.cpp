#include "compiler/stock/cutting/guillotine/frames.hpp"

#include <algorithm>
#include <optional>

namespace rodwright::cutting::guillotine {
namespace {

struct Cut {
    Axis axis = Axis::length;
    int position = 0;
};

class Framer {
  public:
    Framer(const Kinds& kinds, const Stock& stock, Random& random)
        : kinds_(kinds), stock_(stock), random_(random) {
        regions_.push_back({{{}, stock.size}});
        divide(0, 0, std::nullopt);
    }

    std::vector<Region> regions() && { return std::move(regions_); }

  private:
    // Stages up to `stage`, whose cuts divide `axis`, have made the region.
    void divide(int index, int stage, std::optional<Axis> axis) {
        const Rectangle area = regions_[at(index)].area;
        regions_[at(index)].stage = stage;
        if (area.size.along[0] <= kinds_.kerf.along[0] || area.size.along[1] <= kinds_.kerf.along[1]) {
            regions_[at(index)].kind = Region::Kind::waste;
            return;
        }
        const std::vector<Rectangle> defects = defects_in(area);
        if (defects.empty()) return;
        const std::optional<Cut> cut = choose(area, defects, stage, axis);
        if (!cut) {
            regions_[at(index)].kind = Region::Kind::waste;
            return;
        }
        const int own = stage_of(cut->axis, stage, axis);
        Rectangle first = area;
        Rectangle second = area;
        first.size[cut->axis] = cut->position - area.corner[cut->axis];
        second.corner[cut->axis] = cut->position;
        second.size[cut->axis] -= first.size[cut->axis];
        const int index_first = static_cast<int>(regions_.size());
        regions_.push_back({first});
        regions_.push_back({second});
        Region& whole = regions_[at(index)];
        whole.kind = Region::Kind::cut;
        whole.axis = cut->axis;
        whole.first = index_first;
        whole.second = index_first + 1;
        whole.stage = own;
        divide(index_first, own, cut->axis);
        divide(index_first + 1, own, cut->axis);
    }

    int stage_of(Axis cut, int stage, std::optional<Axis> axis) const {
        if (axis == cut) return stage;
        const bool skips = stage == 0 && kinds_.rule.first_axis && *kinds_.rule.first_axis != cut;
        return stage + (skips ? 2 : 1);
    }

    // A part may end where a defect begins: the kerf behind it lies on the defect.
    bool touches(const Rectangle& area, const Rectangle& defect) const {
        for (std::size_t a = 0; a < 2; ++a) {
            const int end = area.corner.along[a] + area.size.along[a] - kinds_.kerf.along[a];
            if (defect.corner.along[a] >= end) return false;
            if (defect.corner.along[a] + defect.size.along[a] <= area.corner.along[a]) return false;
        }
        return true;
    }

    std::vector<Rectangle> defects_in(const Rectangle& area) const {
        std::vector<Rectangle> found;
        std::copy_if(stock_.defects.begin(), stock_.defects.end(), std::back_inserter(found),
                     [&](const Rectangle& defect) { return touches(area, defect); });
        return found;
    }

    std::optional<Cut> choose(const Rectangle& area, const std::vector<Rectangle>& defects, int stage,
                              std::optional<Axis> axis) {
        std::vector<Cut> cuts;
        for (const Axis divided : {Axis::length, Axis::width}) {
            if (kinds_.rule.stages && stage_of(divided, stage, axis) > *kinds_.rule.stages) continue;
            if (!kinds_.is_long_enough(divided, area.size[other(divided)])) continue;
            for (const Rectangle& defect : defects) {
                add(cuts, area, {divided, defect.corner[divided] + kinds_.kerf[divided]});
                add(cuts, area, {divided, defect.corner[divided] + defect.size[divided]});
            }
            if (kinds_.parts.empty() || random_.one_in(2)) continue;
            const Kind& part = kinds_.parts[at(random_.below(static_cast<int>(kinds_.parts.size())))];
            const Size size = part.size(part.may_turn && random_.one_in(2));
            add(cuts, area, {divided, area.corner[divided] + size[divided]});
            add(cuts, area, {divided, area.corner[divided] + area.size[divided] - size[divided]});
        }
        if (cuts.empty()) return std::nullopt;
        return cuts[at(random_.below(static_cast<int>(cuts.size())))];
    }

    // The first side must be more than dust.
    void add(std::vector<Cut>& cuts, const Rectangle& area, Cut cut) const {
        const int from = area.corner[cut.axis] + kinds_.kerf[cut.axis];
        const int to = area.corner[cut.axis] + area.size[cut.axis];
        if (cut.position > from && cut.position < to) cuts.push_back(cut);
    }

    const Kinds& kinds_;
    const Stock& stock_;
    Random& random_;
    std::vector<Region> regions_;
};

}  // namespace

std::vector<Region> frame(const Kinds& kinds, const Stock& stock, Random& random) {
    return Framer(kinds, stock, random).regions();
}

}  // namespace rodwright::cutting::guillotine
