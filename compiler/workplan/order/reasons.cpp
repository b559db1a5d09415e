#include "compiler/workplan/order/reasons.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace rodwright {
namespace {

const LengthStyle plain;  // any will do to compare

class Reasons {
  public:
    Reasons(const std::vector<WorkItem>& items, const std::vector<OrderEdge>& edges,
            const std::vector<std::size_t>& position)
        : items_(items), position_(position), edges_of_(items.size()) {
        for (const OrderEdge& edge : edges) edges_of_[edge.after].push_back(&edge);
    }

    std::vector<std::vector<WorkReason>> all() {
        std::vector<std::size_t> order(items_.size());
        for (std::size_t i = 0; i < items_.size(); ++i) order[position_[i]] = i;
        std::vector<std::vector<WorkReason>> reasons(items_.size());
        for (const std::size_t item : order) reasons[item] = of_item(item);
        return reasons;
    }

  private:
    // Where several say the same, the last of them in the list is what it waits for.
    std::vector<WorkReason> of_item(std::size_t item) {
        std::map<std::pair<std::string, Seconds>, const OrderEdge*> last;
        for (const OrderEdge* edge : edges_of_[item]) {
            const OrderEdge*& known = last[{read_out(edge->because, plain), edge->wait}];
            if (known == nullptr || position_[known->before] < position_[edge->before]) known = edge;
        }
        std::vector<WorkReason> reasons;
        for (const auto& [words, edge] : last)
            reasons.push_back(
                {position_[edge->before], edge->because, edge->wait, shown(*edge, words.first)});
        std::ranges::stable_sort(reasons, {}, &WorkReason::after);
        show_last(reasons);
        return reasons;
    }

    // More than two explain nothing any more: those of the steps just before it are the ones to know.
    static void show_last(std::vector<WorkReason>& reasons) {
        std::size_t left = 2;
        for (auto reason = reasons.rbegin(); reason != reasons.rend(); ++reason) {
            if (reason->shown && left > 0) {
                --left;
            } else {
                reason->shown = false;
            }
        }
    }

    bool shown(const OrderEdge& edge, const std::string& words) {
        if (words.empty() || edge.between_stages) return false;
        if (edge.rule != nullptr) return told_.insert(words).second;
        const WorkItem& before = items_[edge.before];
        const WorkItem& after = items_[edge.after];
        if (before.operation.work != after.operation.work) return told_.insert(words).second;
        return !before.member.empty() && !after.member.empty() && before.member != after.member;
    }

    const std::vector<WorkItem>& items_;
    const std::vector<std::size_t>& position_;
    std::vector<std::vector<const OrderEdge*>> edges_of_;
    std::set<std::string> told_;
};

}  // namespace

std::vector<std::vector<WorkReason>> reasons_of(const std::vector<WorkItem>& items,
                                                const std::vector<OrderEdge>& edges,
                                                const std::vector<std::size_t>& position) {
    return Reasons(items, edges, position).all();
}

}  // namespace rodwright
