// What has to be done before what, and why.
#pragma once

#include <boost/graph/adjacency_list.hpp>
#include <string>
#include <vector>

#include "backends/steps/work_items.hpp"

namespace rodwright {

// Vertices 0 to items - 1 are the items; the ones above are gates, which stand for "all of these" without an
// edge for every pair.
class OrderGraph {
  public:
    struct Edge {
        std::string because;
        bool of_rule = false;  // not of a joint or shape's own definition
    };
    using Graph =
        boost::adjacency_list<boost::vecS, boost::vecS, boost::bidirectionalS, boost::no_property, Edge>;
    using Vertex = std::size_t;

    explicit OrderGraph(std::size_t items) : graph_(items), items_(items) {}

    Vertex add_gate() { return boost::add_vertex(graph_); }
    void add(Vertex before, Vertex after, Edge edge) {
        boost::add_edge(before, after, std::move(edge), graph_);
    }

    const Graph& graph() const { return graph_; }
    bool is_item(Vertex vertex) const { return vertex < items_; }
    std::size_t items() const { return items_; }

    // The items in an order that follows every edge; of those that are free, the one of the smallest rank
    // first. Fewer than items() if there is a circle.
    std::vector<Vertex> sorted(const std::vector<std::size_t>& ranks) const;
    // The items of one circle, in their own order; empty if there is none.
    std::vector<Vertex> circle() const;

  private:
    Graph graph_;
    std::size_t items_;
};

}  // namespace rodwright
