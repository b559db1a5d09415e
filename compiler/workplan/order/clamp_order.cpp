#include "compiler/workplan/order/clamp_order.hpp"

#include <algorithm>

namespace rodwright {
namespace {

// Whether the shop has these clamps, for every reach as many as are at least so long.
bool enough(const Shop& shop, const std::vector<ClampUse>& uses) {
    return std::ranges::all_of(uses, [&](const ClampUse& use) {
        int wanted = 0;
        for (const ClampUse& other : uses) wanted += other.reach >= use.reach ? other.count : 0;
        int there = 0;
        for (const ClampStock& clamps : shop.clamps()) there += clamps.length >= use.reach ? clamps.count : 0;
        return wanted <= there;
    });
}

std::vector<ClampUse> together(const std::vector<const GlueUp*>& glue_ups) {
    std::vector<ClampUse> uses;
    for (const GlueUp* each : glue_ups) uses.insert(uses.end(), each->clamps.begin(), each->clamps.end());
    return uses;
}

}  // namespace

void add_clamp_order(const std::vector<WorkItem>& items, const std::vector<GlueUp>& glue_ups,
                     const Shop& shop, std::vector<OrderEdge>& edges) {
    if (shop.clamps().empty()) return;
    std::vector<std::size_t> glued;  // items, in the order of the glue-ups
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i].operation.glue_up) glued.push_back(i);
    }
    const auto glue_up_of = [&](std::size_t item) { return &glue_ups[*items[item].operation.glue_up]; };
    for (std::size_t later = 0; later < glued.size(); ++later) {
        std::vector<std::size_t> clamped;
        for (std::size_t earlier = 0; earlier < later; ++earlier) {
            if (!items[glued[earlier]].parts.intersects(items[glued[later]].parts))
                clamped.push_back(glued[earlier]);
        }
        std::vector<const GlueUp*> at_once = {glue_up_of(glued[later])};
        for (const std::size_t item : clamped) at_once.push_back(glue_up_of(item));
        for (const std::size_t item : clamped) {
            if (enough(shop, together(at_once))) break;
            const Seconds wait = items[item].waits[static_cast<std::size_t>(WaitFor::clamp)];
            edges.push_back({item, glued[later], "its clamps are needed here", wait, nullptr, false});
            at_once.erase(at_once.begin() + 1);
        }
    }
}

}  // namespace rodwright
