#include "compiler/workplan/schedule/beam.hpp"

#include <algorithm>
#include <limits>
#include <unordered_map>

#include "compiler/stock/cutting/random.hpp"
#include "compiler/workplan/schedule/outlook.hpp"

namespace rodwright::schedule {
namespace {

struct State {
    Partial partial;
    std::size_t history = none;
};

struct Step {
    std::size_t before = none;  // index of a step
    std::size_t task = none;
};

// What a state is worth with one task more.
struct Candidate {
    Figures figures;  // as far as they can be foreseen
    std::size_t state = 0;
    Placing placing;
};

class Beam {
  public:
    Beam(const Network& network, Seconds enough, std::size_t width)
        : network_(network), width_(width), outlook_(network) {
        cutting::Random random(network.size());
        for (std::size_t i = 0; i < network.size(); ++i) keys_.push_back(random.next());
        states_.push_back({Partial(network, enough)});
    }

    Found run() {
        for (std::size_t level = 0; level < network_.size(); ++level) {
            find_candidates();
            keep_best();
        }
        return best();
    }

  private:
    void find_candidates();
    void add_candidates(std::size_t index);
    Candidate candidate(const Partial& partial, const Placing& placing) const;
    void keep_best();
    bool dominated(const Partial& partial, const std::vector<std::size_t>& rivals) const;
    Found best() const;

    const Network& network_;
    std::size_t width_;
    Outlook outlook_;
    std::vector<std::uint64_t> keys_;  // random, by task
    std::vector<State> states_;
    std::vector<Candidate> candidates_;
    std::vector<State> next_;
    std::vector<Step> steps_;
    bool complete_ = true;
};

void Beam::find_candidates() {
    candidates_.clear();
    for (std::size_t i = 0; i < states_.size(); ++i) add_candidates(i);
}

// Nobody stands idle where a task that asks for no set-up could be done in the meantime: it would not delay
// anything.
void Beam::add_candidates(std::size_t index) {
    const Partial& partial = states_[index].partial;
    outlook_.look(partial);
    const std::size_t first = candidates_.size();
    Seconds idle_until = std::numeric_limits<Seconds>::max();
    for (const std::size_t task : partial.available()) {
        const Placing placing = partial.progress().place(network_, task);
        if (!placing.sets_up && placing.end > placing.begin) idle_until = std::min(idle_until, placing.end);
        candidates_.push_back(candidate(partial, placing));
        candidates_.back().state = index;
    }
    const auto idle = [&](const Candidate& c) { return c.placing.begin >= idle_until; };
    const auto begin = candidates_.begin() + static_cast<std::ptrdiff_t>(first);
    candidates_.erase(std::remove_if(begin, candidates_.end(), idle), candidates_.end());
}

Candidate Beam::candidate(const Partial& partial, const Placing& placing) const {
    Candidate c;
    c.placing = placing;
    c.figures = partial.progress().figures();
    const Partial::Change change = partial.change(network_, placing);
    c.figures.set_ups += (placing.sets_up ? 1U : 0U) + change.sets_to_make;
    c.figures.makespan = std::max({partial.progress().chain(), placing.end + network_.tail(placing.task),
                                   outlook_.after(placing, change.work)});
    // What tasks in a row share is the same for all in the end, less what is spared.
    c.figures.handling -= partial.parts() + static_cast<std::int64_t>(placing.shared);
    const std::size_t taken = partial.progress().taken();
    c.figures.displacement += taken > placing.task ? taken - placing.task : placing.task - taken;
    return c;
}

void Beam::keep_best() {
    const auto order = [](const Candidate& a, const Candidate& b) {
        return std::tie(a.figures, a.state, a.placing.task) < std::tie(b.figures, b.state, b.placing.task);
    };
    std::sort(candidates_.begin(), candidates_.end(), order);
    std::unordered_map<std::uint64_t, std::vector<std::size_t>> by_key;
    next_.clear();
    for (const Candidate& c : candidates_) {
        if (next_.size() == width_) {
            complete_ = false;
            break;
        }
        Partial partial = states_[c.state].partial;
        partial.take(network_, c.placing);
        std::vector<std::size_t>& rivals = by_key[partial.key(network_, keys_)];
        if (dominated(partial, rivals)) continue;
        rivals.push_back(next_.size());
        next_.push_back({std::move(partial), steps_.size()});
        steps_.push_back({states_[c.state].history, c.placing.task});
    }
    std::swap(states_, next_);
}

bool Beam::dominated(const Partial& partial, const std::vector<std::size_t>& rivals) const {
    return std::any_of(rivals.begin(), rivals.end(), [&](std::size_t rival) {
        const Partial& other = next_[rival].partial;
        return other.same_tasks(partial) && other.as_good_as(partial);
    });
}

Found Beam::best() const {
    const auto best = std::min_element(states_.begin(), states_.end(), [](const State& a, const State& b) {
        return a.partial.progress().figures() < b.partial.progress().figures();
    });
    Found found;
    found.figures = best->partial.progress().figures();
    found.complete = complete_;
    for (std::size_t i = best->history; i != none; i = steps_[i].before)
        found.order.push_back(steps_[i].task);
    std::reverse(found.order.begin(), found.order.end());
    return found;
}

}  // namespace

Found search_beam(const Network& network, Seconds enough, std::size_t width) {
    return Beam(network, enough, width).run();
}

}  // namespace rodwright::schedule
