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
    Framer(const Kinds& kinds, const Stock& stock, Random& random) : kinds_(kinds), random_(random) {
        regions_.push_back({{{}, stock.size}});
        for (const Defect& defect : stock.defects) near_.push_back(&defect);
        divide(0, 0, std::nullopt, {0, near_.size()});
    }

    std::vector<Region> regions() && { return std::move(regions_); }

  private:
    // Of `near_`.
    struct Range {
        std::size_t first = 0;
        std::size_t last = 0;
    };

    // Stages up to `stage`, whose cuts divide `axis`, have made the region out of one with those defects in
    // it.
    void divide(int index, int stage, std::optional<Axis> axis, Range around) {
        const Rectangle area = regions_[at(index)].area;
        regions_[at(index)].stage = stage;
        if (area.size.along[0] <= kinds_.kerf.along[0] || area.size.along[1] <= kinds_.kerf.along[1]) {
            regions_[at(index)].kind = Region::Kind::waste;
            return;
        }
        const Range inside = defects_in(area, around);
        if (inside.first == inside.last) return;
        const bool one_face = kinds_.any_one_face() && faces_of(inside) != Faces::both;
        std::optional<Cut> cut;
        if (!one_face || random_.one_in(2)) cut = choose(area, inside, stage, axis);
        if (!cut) {
            regions_[at(index)].kind = one_face ? Region::Kind::one_face : Region::Kind::waste;
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
        divide(index_first, own, cut->axis, inside);
        divide(index_first + 1, own, cut->axis, inside);
        near_.resize(inside.first);
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

    // Appends them to `near_`.
    Range defects_in(const Rectangle& area, Range around) {
        const std::size_t first = near_.size();
        for (std::size_t i = around.first; i < around.last; ++i) {
            if (touches(area, near_[i]->area)) near_.push_back(near_[i]);
        }
        return {first, near_.size()};
    }

    Faces faces_of(Range inside) const {
        Faces faces = Faces::none;
        for (std::size_t i = inside.first; i < inside.last; ++i) faces = faces | near_[i]->faces;
        return faces;
    }

    std::optional<Cut> choose(const Rectangle& area, Range inside, int stage, std::optional<Axis> axis) {
        cuts_.clear();
        for (const Axis divided : {Axis::length, Axis::width}) {
            if (kinds_.rule.stages && stage_of(divided, stage, axis) > *kinds_.rule.stages) continue;
            for (std::size_t i = inside.first; i < inside.last; ++i) {
                const Rectangle& defect = near_[i]->area;
                add(area, {divided, defect.corner[divided] + kinds_.kerf[divided]});
                add(area, {divided, defect.corner[divided] + defect.size[divided]});
            }
            if (kinds_.parts.empty() || random_.one_in(2)) continue;
            const Kind& part = kinds_.parts[at(random_.below(static_cast<int>(kinds_.parts.size())))];
            const Size size = part.size(part.may_turn && random_.one_in(2));
            add(area, {divided, area.corner[divided] + size[divided]});
            add(area, {divided, area.corner[divided] + area.size[divided] - size[divided]});
        }
        if (cuts_.empty()) return std::nullopt;
        return cuts_[at(random_.below(static_cast<int>(cuts_.size())))];
    }

    // The first side must be more than dust.
    void add(const Rectangle& area, Cut cut) {
        const int from = area.corner[cut.axis] + kinds_.kerf[cut.axis];
        const int to = area.corner[cut.axis] + area.size[cut.axis];
        const bool inside = cut.position > from && cut.position < to;
        if (inside && kinds_.may_be_cut(area.size, cut.axis, cut.position - area.corner[cut.axis]))
            cuts_.push_back(cut);
    }

    const Kinds& kinds_;
    Random& random_;
    std::vector<Region> regions_;
    // Shared by all regions: frames are made by the thousand, and memory would take longer than the rest.
    std::vector<const Defect*> near_;  // a stack: of each region that is being divided, those in it
    std::vector<Cut> cuts_;            // to choose from
};

}  // namespace

std::vector<Region> frame(const Kinds& kinds, const Stock& stock, Random& random) {
    return Framer(kinds, stock, random).regions();
}

}  // namespace rodwright::cutting::guillotine
