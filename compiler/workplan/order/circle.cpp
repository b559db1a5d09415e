#include <fmt/format.h>

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/strong_components.hpp>

#include "compiler/words.hpp"
#include "compiler/workplan/order/work_order.hpp"

namespace rodwright {
namespace {

using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS>;

std::string code_name(const Operation& operation) {
    return operation.work.empty() ? operation.name : operation.work + "." + operation.name;
}

// The items of one strongly connected component of two or more, or one that waits for itself.
std::vector<std::size_t> items_in_circle(std::size_t count, const std::vector<OrderEdge>& edges) {
    Graph graph(count);
    for (const OrderEdge& edge : edges) boost::add_edge(edge.before, edge.after, graph);
    std::vector<std::size_t> component(count);
    boost::strong_components(
        graph, boost::make_iterator_property_map(component.begin(), get(boost::vertex_index, graph)));
    for (std::size_t first = 0; first < count; ++first) {
        std::vector<std::size_t> members;
        for (std::size_t other = first; other < count; ++other) {
            if (component[other] == component[first]) members.push_back(other);
        }
        const bool waits_for_itself = std::ranges::any_of(
            edges, [&](const OrderEdge& edge) { return edge.before == first && edge.after == first; });
        if (members.size() > 1 || waits_for_itself) return members;
    }
    return {};
}

// "a rule has `flatten_face` before `joint_edge`, because the face is what runs against the fence"
std::string rule_words(const OrderRule& rule) {
    return fmt::format("{} rule has {} before {}, because {}", rule.own ? "your" : "a",
                       selector_words(rule.before), selector_words(rule.after), rule.because);
}

}  // namespace

std::optional<Diagnostic> circle_in(const std::vector<WorkItem>& items, const std::vector<OrderEdge>& edges) {
    const std::vector<std::size_t> circle = items_in_circle(items.size(), edges);
    if (circle.empty()) return std::nullopt;
    const auto inside = [&](std::size_t item) { return std::ranges::binary_search(circle, item); };
    std::vector<std::string> names;
    for (const std::size_t i : circle) {
        std::string name = fmt::format("`{}`", code_name(items[i].operation));
        if (std::ranges::find(names, name) == names.end()) names.push_back(std::move(name));
    }
    Diagnostic diagnostic = diagnose(Code::order_cycle, items[circle.front()].where,
                                     "these steps wait for each other: " + joined(names));
    for (const std::size_t i : circle) {
        if (i == circle.front() || items[i].where.file == FileId::none) continue;
        diagnostic.labels.push_back({items[i].where, "and this step"});
    }
    for (const OrderEdge& edge : edges) {
        if (edge.rule == nullptr || !inside(edge.before) || !inside(edge.after)) continue;
        const std::string note = rule_words(*edge.rule);
        if (std::ranges::find(diagnostic.notes, note) == diagnostic.notes.end())
            diagnostic.notes.push_back(note);
    }
    diagnostic.help = diagnostic.notes.empty()
                          ? "take one of their `after` away"
                          : "take one of their `after` away, or the rule out of order.yaml";
    return diagnostic;
}

}  // namespace rodwright
