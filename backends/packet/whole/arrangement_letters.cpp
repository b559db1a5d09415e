// Which part of which view each letter of the general arrangement points at.
#include <algorithm>
#include <map>

#include "backends/packet/whole/arrangement_view.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr std::size_t enough = 12;  // pixels of a part in a view: less is a sliver nobody can point at

std::map<std::uint32_t, std::size_t> pixels_of_parts(const ArrangementView& view) {
    std::map<std::uint32_t, std::size_t> pixels;
    for (const std::uint32_t tag : view.seen) {
        if (tag != no_part) ++pixels[tag];
    }
    return pixels;
}

// Where a kind can be pointed at in a view.
struct Sight {
    std::size_t view = 0;
    Point target;  // in the view's plane
    std::size_t pixels = 0;
};

// Of the copies that show about as well as the best, the one nearest to the letters.
std::map<std::size_t, Sight> sights_in(const Context& context, const ArrangementView& view,
                                       std::size_t index) {
    const std::map<std::uint32_t, std::size_t> pixels = pixels_of_parts(view);
    std::map<std::size_t, Sight> sights;
    const auto kind_of = [&](std::uint32_t tag) {
        return static_cast<std::size_t>(context.piece.parts[tag].kind);
    };
    for (const auto& [tag, count] : pixels) {
        std::size_t& most = sights[kind_of(tag)].pixels;
        most = std::max(most, count);
    }
    std::erase_if(sights, [](const auto& sight) { return sight.second.pixels < enough; });
    const bool column = view.letters.run == Run::upright;
    const auto nearer = [&](Point a, Point b) { return column ? a.x > b.x : a.y > b.y; };
    std::map<std::size_t, bool> known;
    for (const auto& [tag, count] : pixels) {
        const auto sight = sights.find(kind_of(tag));
        if (sight == sights.end() || 10 * count < 6 * sight->second.pixels) continue;
        const Point target = inmost_point(view.seen, view.grid, tag);
        if (known[sight->first] && !nearer(target, sight->second.target)) continue;
        known[sight->first] = true;
        sight->second.view = index;
        sight->second.target = target;
    }
    return sights;
}

std::vector<std::vector<Sight>> sights_of_kinds(const Context& context,
                                                std::span<const ArrangementView> views) {
    std::vector<std::vector<Sight>> sights(context.piece.kinds.size());
    for (std::size_t v = 0; v < views.size(); ++v) {
        for (const auto& [kind, sight] : sights_in(context, views[v], v)) sights[kind].push_back(sight);
    }
    for (auto& of_kind : sights) {
        std::stable_sort(of_kind.begin(), of_kind.end(),
                         [](const Sight& a, const Sight& b) { return a.pixels > b.pixels; });
    }
    return sights;
}

}  // namespace

std::vector<std::string> call_out(const Context& context, std::span<ArrangementView> views) {
    std::vector<std::string> hidden;
    const std::vector<std::vector<Sight>> sights = sights_of_kinds(context, views);
    for (std::size_t k = 0; k < sights.size(); ++k) {
        const auto free = std::find_if(sights[k].begin(), sights[k].end(), [&](const Sight& sight) {
            return views[sight.view].callouts.size() < capacity(views[sight.view].letters);
        });
        if (free == sights[k].end()) {
            hidden.push_back(context.piece.kinds[k].letter);
            continue;
        }
        ArrangementView& view = views[free->view];
        view.callouts.push_back({context.piece.kinds[k].letter, view.place.on_sheet(free->target)});
    }
    return hidden;
}

}  // namespace rodwright::packet
