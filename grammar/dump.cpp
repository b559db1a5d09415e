#include <fmt/format.h>

#include "grammar/print.hpp"

namespace rodwright {

static bool is_leaf(const Tree& tree, NodeId id) {
    return tree[id].after == static_cast<std::uint32_t>(id) + 1;
}

std::string dump(const Tree& tree) {
    std::string out;
    std::vector<std::uint32_t> ends;
    for (std::uint32_t i = 0; i < tree.nodes().size(); ++i) {
        while (!ends.empty() && ends.back() <= i) ends.pop_back();
        const NodeId id{i};
        const Node& node = tree[id];
        out += std::string(2 * ends.size(), ' ');
        out += kind_name(node.kind);
        if (node.op != Operator::none) out += fmt::format(" {}", operator_text(node.op));
        out += fmt::format(" [{},{})", node.begin, node.end);
        if (is_leaf(tree, id)) out += fmt::format(" {}", tree.text(id));
        out += '\n';
        ends.push_back(node.after);
    }
    return out;
}

}  // namespace rodwright
