#include "compiler/workplan/glue_up/fewest_stages.hpp"

#include <algorithm>
#include <iterator>

namespace rodwright {
namespace {

PartNumbers all_but(const PartNumbers& parts, const PartNumbers& gone) {
    PartNumbers left;
    std::ranges::set_difference(parts, gone, std::back_inserter(left));
    return left;
}

class StageSearch {
  public:
    StageSearch(const Blocking& blocking, const StageCount& count) : blocking_(blocking), count_(count) {}

    // Takes `parts` apart, for which `known` is one way.
    void choose(const PartNumbers& parts, std::vector<Parting> known) {
        std::vector<Parting> best = std::move(known);
        if (best.empty()) return;
        std::size_t fewest = count_(best);
        for (const Parting& first : candidates(parts)) {
            if (fewest < 2 || !afford(parts)) break;
            std::vector<Parting> tried = {first};
            for (const PartNumbers* half : {&first.goes, &first.stays})
                std::ranges::move(take_apart(blocking_, *half).partings, std::back_inserter(tried));
            const std::size_t stages = count_(tried);
            if (stages >= fewest) continue;
            fewest = stages;
            best = std::move(tried);
        }
        const Parting first = best.front();
        chosen_.push_back(first);
        choose(first.goes, within(best, first.goes));
        choose(first.stays, within(best, first.stays));
    }

    std::vector<Parting> take() { return std::move(chosen_); }

  private:
    // Every smallest group that can go, whichever way.
    std::vector<Parting> candidates(const PartNumbers& parts) const {
        std::vector<Parting> found;
        for (const Direction way : all_ways) {
            for (PartNumbers& group : groups_that_can_go(blocking_, parts, way)) {
                const bool known = std::ranges::find(found, group, &Parting::goes) != found.end();
                if (known || group.size() == parts.size()) continue;
                PartNumbers rest = all_but(parts, group);
                found.push_back({std::move(group), std::move(rest), way});
            }
        }
        return found;
    }

    // A rollout looks at every pair of parts along six ways for every part that goes.
    bool afford(const PartNumbers& parts) {
        constexpr std::size_t most = 20'000'000;
        spent_ += 6 * parts.size() * parts.size() * parts.size();
        return spent_ < most;
    }

    static std::vector<Parting> within(const std::vector<Parting>& partings, const PartNumbers& group) {
        std::vector<Parting> inside;
        std::ranges::copy_if(partings, std::back_inserter(inside), [&](const Parting& parting) {
            return std::ranges::includes(group, parting.goes) && std::ranges::includes(group, parting.stays);
        });
        return inside;
    }

    const Blocking& blocking_;
    const StageCount& count_;
    std::vector<Parting> chosen_;
    std::size_t spent_ = 0;
};

}  // namespace

std::vector<Parting> fewest_stages(const Blocking& blocking, const std::vector<Parting>& known,
                                   const StageCount& count) {
    PartNumbers all(blocking.parts());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
    StageSearch search(blocking, count);
    search.choose(all, known);
    return search.take();
}

}  // namespace rodwright
