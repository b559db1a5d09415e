#include "compiler/workplan/order/work_order.hpp"

#include <algorithm>
#include <map>

#include "compiler/workplan/operations/definition_work.hpp"

namespace rodwright {
namespace {

using Indices = std::vector<std::size_t>;

bool share_use(const WorkItem& a, const WorkItem& b) {
    return std::ranges::any_of(a.uses, [&](std::size_t use) { return b.uses.contains(use); });
}

std::size_t number(Stage stage) {
    return static_cast<std::size_t>(stage);
}

bool selects(const WorkSelector& selector, const Operation& operation) {
    if (selector.stage) return operation.stage == *selector.stage;
    const bool work_fits = selector.work == "*" ? !operation.work.empty() : operation.work == selector.work;
    return work_fits && operation.name == selector.name;
}

bool is_between(const OrderRule& rule, const WorkItem& a, const WorkItem& b) {
    const bool same_part = a.parts.intersects(b.parts);
    return rule.others ? !same_part && !share_use(a, b) : same_part;
}

class Orderer {
  public:
    Orderer(std::vector<WorkItem>& items, const OrderRules& rules, bool in_stages)
        : items_(items), rules_(rules), in_stages_(in_stages) {
        for (std::size_t i = 0; i < items_.size(); ++i)
            by_name_[{items_[i].operation.work, items_[i].operation.name}].push_back(i);
    }

    std::vector<OrderEdge> order() {
        for (bool changed = true; changed;) {
            changed = false;
            for (std::size_t i = 0; i < items_.size(); ++i) changed = raise_stage(i) || changed;
            for (const OrderRule& rule : rules_.rules) changed = (rule.firm && raise_by(rule)) || changed;
        }
        add_stages();
        for (const OrderRule& rule : rules_.rules) add_rule(rule);
        for (std::size_t i = 0; i < items_.size(); ++i) add_definition_order(i);
        return std::move(edges_);
    }

  private:
    // The items that a definition's `after` names: steps of the same joint or shape, or those of another on
    // the same part. Empty if it names a stage or work that this piece has not.
    Indices named(std::size_t item, const WorkAfter& after) const {
        const WorkItem& own = items_[item];
        const std::size_t dot = after.step.find('.');
        const bool elsewhere = dot != std::string::npos;
        const std::string step = elsewhere ? after.step.substr(dot + 1) : after.step;
        const bool closing = closes_joint(step);
        const auto found = by_name_.find(closing     ? std::pair<std::string, std::string>{"", "glue_up"}
                                         : elsewhere ? std::pair{after.step.substr(0, dot), step}
                                                     : std::pair{after.work, step});
        if (found == by_name_.end()) return {};
        Indices items;
        for (const std::size_t i : found->second) {
            if (elsewhere ? own.parts.intersects(items_[i].parts) : share_use(own, items_[i]))
                items.push_back(i);
        }
        // Of several steps of one name, the others are meant.
        if (items.size() > 1) std::erase(items, item);
        return items;
    }

    bool raise_stage(std::size_t item) {
        Stage& stage = items_[item].operation.stage;
        const Stage before = stage;
        for (const WorkAfter& after : items_[item].after) {
            const Indices others = named(item, after);
            for (const std::size_t other : others) stage = std::max(stage, items_[other].operation.stage);
            const std::optional<Stage> whole = find_stage(after.step);
            if (others.empty() && whole && number(*whole) + 1 < stage_count)
                stage = std::max(stage, static_cast<Stage>(number(*whole) + 1));
        }
        return stage != before;
    }

    bool raise_by(const OrderRule& rule) {
        bool changed = false;
        for (const std::size_t a : selected(rule.before)) {
            const Stage least = items_[a].operation.stage;
            for (const std::size_t b : selected(rule.after)) {
                Stage& stage = items_[b].operation.stage;
                if (a == b || stage >= least || !is_between(rule, items_[a], items_[b])) continue;
                stage = least;
                changed = true;
            }
        }
        return changed;
    }

    Seconds wait_after(std::size_t item, WaitFor wait) const {
        return wait == WaitFor::nothing ? 0 : items_[item].waits[static_cast<std::size_t>(wait)];
    }

    // The rule for a stage that follows another, which is also why all later ones do.
    const OrderRule* stage_rule(Stage before, Stage after) const {
        const auto found = std::ranges::find_if(rules_.rules, [&](const OrderRule& rule) {
            return rule.before.stage == before && rule.after.stage == after;
        });
        return found == rules_.rules.end() ? nullptr : &*found;
    }

    void add_stages() {
        for (std::size_t a = 0; a < items_.size(); ++a) {
            for (std::size_t b = 0; b < items_.size(); ++b) {
                const Stage before = items_[a].operation.stage;
                const Stage after = items_[b].operation.stage;
                const bool same_part = items_[a].parts.intersects(items_[b].parts);
                if (before >= after || (!in_stages_ && !same_part)) continue;
                const OrderRule* rule = stage_rule(before, after);
                const Seconds wait = rule == nullptr || !same_part ? 0 : wait_after(a, rule->wait);
                edges_.push_back({a, b, {}, wait, rule, true});
            }
        }
    }

    Indices selected(const WorkSelector& selector) const {
        Indices items;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            if (selects(selector, items_[i].operation)) items.push_back(i);
        }
        return items;
    }

    // The library's rules are how it is usually done: where a definition has put its work into a later stage,
    // it knows better.
    void add_rule(const OrderRule& rule) {
        if (rule.before.stage && rule.after.stage) return;
        const Indices second = selected(rule.after);
        for (const std::size_t a : selected(rule.before)) {
            for (const std::size_t b : second) {
                const bool later = rule.before == rule.after ? a < b : a != b;
                const bool against_stages = items_[b].operation.stage < items_[a].operation.stage;
                if (!later || (against_stages && !rule.own)) continue;
                // What a definition has put into the stage itself is not meant by a rule about all of it.
                if (!rule.others && rule.after.stage && items_[a].operation.stage >= *rule.after.stage)
                    continue;
                if (!rule.others && rule.before.stage && items_[b].operation.stage <= *rule.before.stage)
                    continue;
                if (!is_between(rule, items_[a], items_[b])) continue;
                edges_.push_back({a, b, rule.because, wait_after(a, rule.wait), &rule, false});
            }
        }
    }

    void add_definition_order(std::size_t item) {
        for (const WorkAfter& after : items_[item].after) {
            const Indices others = named(item, after);
            for (const std::size_t other : others)
                edges_.push_back({other, item, after.because, 0, nullptr, false});
            const std::optional<Stage> whole = find_stage(after.step);
            if (!others.empty() || !whole) continue;
            // All of that stage on its parts, of which the last is told.
            for (std::size_t i = 0; i < items_.size(); ++i) {
                const bool of_stage =
                    items_[i].operation.stage == *whole && *whole < items_[item].operation.stage;
                if (of_stage && items_[i].parts.intersects(items_[item].parts))
                    edges_.push_back({i, item, after.because, 0, nullptr, false});
            }
        }
    }

    std::vector<WorkItem>& items_;
    const OrderRules& rules_;
    bool in_stages_;
    std::map<std::pair<std::string, std::string>, Indices> by_name_;
    std::vector<OrderEdge> edges_;
};

}  // namespace

std::vector<OrderEdge> work_order(std::vector<WorkItem>& items, const OrderRules& rules, bool in_stages) {
    return Orderer(items, rules, in_stages).order();
}

}  // namespace rodwright
