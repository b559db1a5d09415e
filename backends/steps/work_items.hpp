// The steps of a piece before they have an order.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "backends/steps/step_list.hpp"

namespace rodwright {

struct WorkAfter {
    std::string step;
    std::string because;
    friend bool operator==(const WorkAfter&, const WorkAfter&) = default;
};

struct WorkItem {
    Step step;           // without `after`
    std::string member;  // role whose part is worked on, empty for all
    std::set<PartId> parts;
    std::set<std::size_t>
        uses;  // joint kinds by index, then part kinds with shapes: what the work belongs to
    std::vector<WorkAfter> after;                           // as the joint or shape's definition says
    std::string pattern;                                    // the text with `{role}` in place of parts
    std::map<std::string, std::vector<std::string>> named;  // the parts that it names, by role
    Span where;                                             // in the definition
};

// General work first, then joints, then shapes, each in the order of its source. Work that is the same in
// every word but the parts' names is one item for all parts that it is done to.
std::vector<WorkItem> collect_work(const Piece& piece, const OrderRules& rules);

}  // namespace rodwright
