#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "backends/steps/order_graph.hpp"
#include "backends/steps/step_list.hpp"
#include "backends/words.hpp"

namespace rodwright {
namespace {

template <typename Value>
bool overlap(const std::set<Value>& a, const std::set<Value>& b) {
    return std::ranges::any_of(a, [&](const Value& value) { return b.contains(value); });
}

std::size_t number(Stage stage) {
    return static_cast<std::size_t>(stage);
}

class Planner {
  public:
    Planner(const Piece& piece, const OrderRules& rules)
        : rules_(rules), items_(collect_work(piece, rules)), graph_(items_.size()) {
        for (std::size_t i = 0; i < items_.size(); ++i)
            by_name_[{items_[i].step.work, items_[i].step.name}].push_back(i);
        raise_stages();
        add_stages();
        for (const OrderRule& rule : rules.rules) add_rule(rule);
        for (std::size_t i = 0; i < items_.size(); ++i) add_definition_order(i);
    }

    std::optional<StepList> plan(const std::string& title, Diagnostics& diagnostics) {
        const std::vector<std::size_t> order = graph_.sorted(ranks());
        if (order.size() < items_.size()) {
            diagnostics.add(circle_found());
            return std::nullopt;
        }
        StepList list{title, rules_.caution, {}, {}};
        std::vector<std::size_t> position(items_.size());
        for (std::size_t i = 0; i < order.size(); ++i) position[order[i]] = i;
        for (const std::size_t item : order) {
            list.steps.push_back(items_[item].step);
            list.steps.back().after = reasons(item, position);
        }
        note_stages(list);
        return list;
    }

  private:
    using Indices = std::vector<std::size_t>;

    // The items that a definition's `after` names: steps of the same joint or shape, or those of another on
    // the same part. Empty if it names a stage or work that this piece has not.
    Indices named(std::size_t item, const std::string& step) const {
        const WorkItem& own = items_[item];
        const std::size_t dot = step.find('.');
        const bool elsewhere = dot != std::string::npos;
        const auto found = by_name_.find(
            {elsewhere ? step.substr(0, dot) : own.step.work, elsewhere ? step.substr(dot + 1) : step});
        if (found == by_name_.end()) return {};
        Indices items;
        for (const std::size_t i : found->second) {
            const WorkItem& other = items_[i];
            if (elsewhere ? overlap(own.parts, other.parts) : overlap(own.uses, other.uses))
                items.push_back(i);
        }
        // Of several steps of one name, the others are meant.
        if (items.size() > 1) std::erase(items, item);
        return items;
    }

    // Work that must follow a whole stage, or work of a later stage, is itself later than its name says.
    bool raise_stage(std::size_t item) {
        Stage& stage = items_[item].step.stage;
        const Stage before = stage;
        for (const WorkAfter& after : items_[item].after) {
            const Indices others = named(item, after.step);
            for (const std::size_t other : others) stage = std::max(stage, items_[other].step.stage);
            const std::optional<Stage> whole = find_stage(after.step);
            if (others.empty() && whole && number(*whole) + 1 < stage_count) {
                stage = std::max(stage, static_cast<Stage>(number(*whole) + 1));
            }
        }
        return stage != before;
    }

    void raise_stages() {
        for (bool changed = true; changed;) {
            changed = false;
            for (std::size_t i = 0; i < items_.size(); ++i) changed = raise_stage(i) || changed;
        }
    }

    void add_stages() {
        for (std::size_t stage = 0; stage < stage_count; ++stage) {
            const OrderGraph::Vertex start = graph_.add_gate();
            if (stage > 0) graph_.add(stage_ends_.back(), start, {"", true});
            stage_ends_.push_back(graph_.add_gate());
            graph_.add(start, stage_ends_.back(), {"", true});
            for (std::size_t i = 0; i < items_.size(); ++i) {
                if (number(items_[i].step.stage) != stage) continue;
                graph_.add(start, i, {"", true});
                graph_.add(i, stage_ends_.back(), {"", true});
            }
        }
    }

    Indices selected(const StepSelector& selector) const {
        Indices items;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            const Step& step = items_[i].step;
            const bool work_fits = selector.work == "*" ? !step.work.empty() : step.work == selector.work;
            const bool fits =
                selector.stage ? step.stage == *selector.stage : work_fits && step.name == selector.name;
            if (fits) items.push_back(i);
        }
        return items;
    }

    // Rules are how it is usually done: where a definition has put its work into a later stage, it knows
    // better.
    void add_rule(const OrderRule& rule) {
        if (rule.before.stage && rule.after.stage) return;
        const Indices first = selected(rule.before);
        const Indices second = selected(rule.after);
        if (first.empty() || second.empty()) return;
        Stage latest{};
        for (const std::size_t i : first) latest = std::max(latest, items_[i].step.stage);
        const OrderGraph::Vertex gate = graph_.add_gate();
        for (const std::size_t i : first) graph_.add(i, gate, {"", true});
        for (const std::size_t i : second) {
            if (items_[i].step.stage >= latest) graph_.add(gate, i, {rule.because, true});
        }
    }

    void add_definition_order(std::size_t item) {
        for (const WorkAfter& after : items_[item].after) {
            const Indices others = named(item, after.step);
            for (const std::size_t other : others) graph_.add(other, item, {after.because, false});
            const std::optional<Stage> whole = find_stage(after.step);
            if (others.empty() && whole && *whole < items_[item].step.stage) {
                graph_.add(stage_ends_[number(*whole)], item, {after.because, false});
            }
        }
    }

    std::vector<std::size_t> ranks() const {
        std::vector<std::size_t> ranks;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            ranks.push_back(number(items_[i].step.stage) * items_.size() + i);
        }
        return ranks;
    }

    Diagnostic circle_found() const {
        const std::vector<std::size_t> circle = graph_.circle();
        std::vector<std::string> names;
        for (const std::size_t i : circle) {
            names.push_back(fmt::format("`{}`", name_of(items_[i].step)));
        }
        Diagnostic diagnostic = diagnose(Code::order_cycle, items_[circle.front()].where,
                                         "these steps wait for each other: " + joined(names));
        for (const std::size_t i : circle) {
            if (i == circle.front() || items_[i].where.file == FileId::none) continue;
            diagnostic.labels.push_back({items_[i].where, "and this step"});
        }
        diagnostic.help = "take one of their `after` away";
        return diagnostic;
    }

    static std::string name_of(const Step& step) {
        return step.work.empty() ? step.name : step.work + "." + step.name;
    }

    // The last of the items that lead to `vertex` without another item between, by place in the order.
    std::optional<std::size_t> last_before(OrderGraph::Vertex vertex,
                                           const std::vector<std::size_t>& position) const {
        if (graph_.is_item(vertex)) return position[vertex];
        std::optional<std::size_t> last;
        for (const auto& edge : boost::make_iterator_range(in_edges(vertex, graph_.graph()))) {
            const OrderGraph::Vertex source_vertex = source(edge, graph_.graph());
            if (graph_.is_item(source_vertex)) last = std::max(last, std::optional(position[source_vertex]));
        }
        return last;
    }

    bool worth_telling(std::size_t item, OrderGraph::Vertex before, const OrderGraph::Edge& edge) {
        if (edge.because.empty()) return false;
        if (edge.of_rule) return told_.insert(edge.because).second;
        if (!graph_.is_item(before) || items_[before].step.work != items_[item].step.work) return true;
        const std::string& member = items_[before].member;
        return !member.empty() && !items_[item].member.empty() && member != items_[item].member;
    }

    std::vector<StepReason> reasons(std::size_t item, const std::vector<std::size_t>& position) {
        std::vector<StepReason> reasons;
        for (const auto& edge : boost::make_iterator_range(in_edges(item, graph_.graph()))) {
            const OrderGraph::Edge& why = graph_.graph()[edge];
            const OrderGraph::Vertex before = source(edge, graph_.graph());
            if (why.because.empty() && !graph_.is_item(before)) continue;
            const std::optional<std::size_t> after = last_before(before, position);
            if (after) reasons.push_back({*after, why.because, worth_telling(item, before, why)});
        }
        std::ranges::stable_sort(reasons, {}, &StepReason::after);
        show_once(reasons);
        return reasons;
    }

    // The same reason after several steps is told of the last of them.
    static void show_once(std::vector<StepReason>& reasons) {
        std::set<std::string> told;
        for (auto reason = reasons.rbegin(); reason != reasons.rend(); ++reason) {
            reason->shown = reason->shown && told.insert(reason->because).second;
        }
    }

    std::string stage_reason(Stage stage) const {
        for (const OrderRule& rule : rules_.rules) {
            if (rule.before.stage && rule.after.stage == stage) return rule.because;
        }
        return "";
    }

    void note_stages(StepList& list) const {
        for (const Step& step : list.steps) {
            if (!list.stages.empty() && list.stages.back().stage == step.stage) continue;
            list.stages.push_back({step.stage, list.stages.empty() ? "" : stage_reason(step.stage)});
        }
    }

    const OrderRules& rules_;
    std::vector<WorkItem> items_;
    OrderGraph graph_;
    std::map<std::pair<std::string, std::string>, Indices> by_name_;
    std::vector<OrderGraph::Vertex> stage_ends_;
    std::set<std::string> told_;  // reasons of rules, which would else stand at every joint
};

}  // namespace

std::optional<StepList> make_steps(const Piece& piece, const OrderRules& rules, Diagnostics& diagnostics) {
    return Planner(piece, rules).plan(piece.name, diagnostics);
}

std::optional<StepList> make_steps(const Piece& piece, Diagnostics& diagnostics) {
    return make_steps(piece, embedded_order_rules(), diagnostics);
}

std::string step_title(const Step& step) {
    const std::string name = plain_words(step.name);
    return capitalised(step.work.empty() ? name : plain_words(step.work) + ": " + name);
}

std::string step_parts(const Step& step) {
    if (step.all_parts) return "all parts";
    std::vector<std::string> parts;
    for (const StepPart& part : step.parts) {
        parts.push_back(fmt::format("{} {} x {}", part.letter, plain_words(part.name), part.count));
    }
    return joined(parts);
}

std::string step_setting(const Step& step) {
    std::vector<std::string> settings;
    for (const auto& [name, value] : step.settings) settings.push_back(plain_words(name) + " " + value);
    const std::string machine = plain_words(step.machine);
    return settings.empty() ? machine : machine + ": " + joined(settings);
}

}  // namespace rodwright
