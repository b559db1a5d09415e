#include "backends/steps/order_graph.hpp"

#include <boost/graph/strong_components.hpp>
#include <functional>
#include <queue>
#include <utility>

namespace rodwright {

std::vector<OrderGraph::Vertex> OrderGraph::sorted(const std::vector<std::size_t>& ranks) const {
    using Free = std::pair<std::size_t, Vertex>;
    std::priority_queue<Free, std::vector<Free>, std::greater<>> free;
    // Gates print nothing: they go at once, so that they hold nothing up.
    const auto push = [&](Vertex vertex) { free.emplace(is_item(vertex) ? ranks[vertex] + 1 : 0, vertex); };
    std::vector<std::size_t> waiting;
    for (Vertex vertex = 0; vertex < num_vertices(graph_); ++vertex) {
        waiting.push_back(in_degree(vertex, graph_));
        if (waiting.back() == 0) push(vertex);
    }
    std::vector<Vertex> order;
    while (!free.empty()) {
        const Vertex vertex = free.top().second;
        free.pop();
        if (is_item(vertex)) order.push_back(vertex);
        for (const auto& edge : boost::make_iterator_range(out_edges(vertex, graph_))) {
            if (--waiting[target(edge, graph_)] == 0) push(target(edge, graph_));
        }
    }
    return order;
}

std::vector<OrderGraph::Vertex> OrderGraph::circle() const {
    std::vector<std::size_t> component(num_vertices(graph_));
    boost::strong_components(
        graph_, boost::make_iterator_property_map(component.begin(), get(boost::vertex_index, graph_)));
    for (Vertex first = 0; first < items_; ++first) {
        std::vector<Vertex> members;
        for (Vertex other = first; other < items_; ++other) {
            if (component[other] == component[first]) members.push_back(other);
        }
        if (members.size() > 1 || edge(first, first, graph_).second) return members;
    }
    return {};
}

}  // namespace rodwright
