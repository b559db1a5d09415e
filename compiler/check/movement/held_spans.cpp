#include "compiler/check/movement/held_spans.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <queue>

#include "compiler/check/movement/change.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

namespace {

constexpr double least_growth = 1e-6;  // mm for each percent: less is rounding

// One end of a joint's hold, as one of its members has it. Numbered joint * 4 + end * 2 + member.
struct Place {
    std::size_t part = 0;
    double at = 0;  // along the axis, mm
};

// The piece as a net of places along one axis: along a part from one place to the next, at the cost of how
// much the part changes between them, and through a joint that holds fast from one member to the other.
class Net {
  public:
    // Counts its steps in `steps`, and takes no more past limits::held_steps.
    Net(const Piece& piece, Axis axis, std::size_t& steps)
        : piece_(piece), axis_(axis), steps_(steps), of_part_(piece.parts.size()) {
        for (const Part& part : piece.parts) change_.push_back(change_per_percent(piece, part, axis));
        for (const Joint& joint : piece.joints) add(joint);
        for (std::vector<std::size_t>& places : of_part_)
            std::ranges::stable_sort(places, {}, [&](std::size_t place) { return places_[place].at; });
        for (const std::vector<std::size_t>& places : of_part_) {
            for (std::size_t i = 0; i < places.size(); ++i) rank_[places[i]] = i;
        }
    }

    std::optional<HeldSpan> worst_of(std::size_t part, const Seasons& seasons) const {
        std::optional<HeldSpan> worst;
        if (!change_[part] || *change_[part] <= 0) return worst;
        for (const std::size_t low : of_part_[part]) {
            if (!held(low)) continue;
            if (steps_ > limits::held_steps) break;
            steps_ += of_part_[part].size();
            const std::vector<double> changes = least_changes(other_side(low), part);
            for (const std::size_t high : of_part_[part]) {
                if (!held(high) || places_[high].at <= places_[low].at) continue;
                const auto span = span_between(part, low, high, changes[other_side(high)]);
                if (span && (!worst || excess(*span, seasons) > excess(*worst, seasons))) worst = span;
            }
        }
        return worst;
    }

  private:
    const Piece& piece_;
    Axis axis_;
    std::size_t& steps_;
    std::vector<std::optional<double>> change_;  // by part
    std::vector<Place> places_;
    std::vector<std::size_t> rank_;                  // in its part's row
    std::vector<std::vector<std::size_t>> of_part_;  // places, along the axis
    std::vector<std::array<double, 2>> room_;        // by joint: of the first member, down and up the axis

    static std::size_t other_side(std::size_t place) { return place ^ 1U; }
    static std::size_t joint_of(std::size_t place) { return place / 4; }

    void add(const Joint& joint) {
        room_.push_back({room_of(piece_, joint, {axis_, false}), room_of(piece_, joint, {axis_, true})});
        for (const Rational& end : {joint.hold.low[axis_], joint.hold.high[axis_]}) {
            for (std::size_t member = 0; member < 2; ++member) {
                const auto part = static_cast<std::size_t>(joint.members[member].part);
                of_part_[part].push_back(places_.size());
                places_.push_back({part, end.get_d()});
                rank_.push_back(0);
            }
        }
    }

    // Of the part at that place, against the other one, down or up the axis.
    double room(std::size_t place, bool up) const {
        const bool first = place % 2 == 0;
        return room_[joint_of(place)][up == first ? 1 : 0];
    }
    bool held(std::size_t place) const {
        return room(place, false) < any_room || room(place, true) < any_room;
    }
    bool holds_fast(std::size_t place) const { return room(place, false) == 0 && room(place, true) == 0; }

    // `around`: what holds it changes by that between the two places.
    std::optional<HeldSpan> span_between(std::size_t part, std::size_t low, std::size_t high,
                                         double around) const {
        if (around == any_room) return std::nullopt;
        const double span = places_[high].at - places_[low].at;
        const double growth = *change_[part] * span - around;
        if (growth <= least_growth) return std::nullopt;
        HeldSpan held{part, axis_, joint_of(low), joint_of(high), span, growth, give, give, true};
        if (holds_fast(low) && holds_fast(high)) return held;
        held.room_out = room(low, false) + room(high, true);
        held.room_in = room(low, true) + room(high, false);
        held.fast = false;
        return held;
    }

    // From one place to every other, without going through a part: the least change of what lies between
    // (Dijkstra 1959). A wood that is not known is taken to change as little as along the grain.
    std::vector<double> least_changes(std::size_t from, std::size_t without) const {
        std::vector<double> least(places_.size(), any_room);
        using Step = std::pair<double, std::size_t>;
        std::priority_queue<Step, std::vector<Step>, std::greater<>> next;
        const auto reach = [&](std::size_t place, double change) {
            if (places_[place].part == without || change >= least[place]) return;
            least[place] = change;
            next.emplace(change, place);
        };
        reach(from, 0);
        while (!next.empty()) {
            const double change = next.top().first;
            const std::size_t place = next.top().second;
            next.pop();
            ++steps_;
            if (change > least[place]) continue;
            if (holds_fast(place)) reach(other_side(place), change);
            const std::vector<std::size_t>& row = of_part_[places_[place].part];
            const double rate = change_[places_[place].part].value_or(0);
            const std::size_t rank = rank_[place];
            const auto along = [&](std::size_t neighbour) {
                reach(neighbour, change + rate * std::abs(places_[neighbour].at - places_[place].at));
            };
            if (rank > 0) along(row[rank - 1]);
            if (rank + 1 < row.size()) along(row[rank + 1]);
        }
        return least;
    }
};

}  // namespace

double room_of(const Piece& piece, const Joint& joint, Direction way) {
    for (const Freedom& free : joint.lets) {
        if (free.way == way) return free.by ? free.by->get_d() : any_room;
    }
    const JointKind& kind = piece[joint.kind];
    return kind.fastening || !kind.glue.empty() ? 0 : any_room;
}

double excess(const HeldSpan& span, const Seasons& seasons) {
    return std::max(seasons.rise() * span.growth - span.room_out,
                    seasons.fall() * span.growth - span.room_in);
}

HeldSpans held_spans(const Piece& piece, const Seasons& seasons) {
    HeldSpans held;
    std::size_t steps = 0;
    std::vector<Net> nets;
    for (const Axis axis : all_axes) nets.emplace_back(piece, axis, steps);
    for (std::size_t part = 0; part < piece.parts.size(); ++part) {
        for (const Net& net : nets) {
            if (const auto span = net.worst_of(part, seasons)) held.spans.push_back(*span);
        }
        if (steps <= limits::held_steps) continue;
        held.left_from = part + 1;
        break;
    }
    return held;
}

}  // namespace rodwright
