// An operation before it has an order.
#pragma once

#include <array>
#include <boost/dynamic_bitset.hpp>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "compiler/workplan/data/order_rules.hpp"
#include "compiler/workplan/machines/machine_limits.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

using PartSet = boost::dynamic_bitset<>;  // by number of the part

struct WorkAfter {
    std::string work;  // of the definition that says so
    std::string step;
    Phrase because;
    friend bool operator==(const WorkAfter&, const WorkAfter&) = default;
};

struct WorkItem {
    Operation operation;  // without `after` and `time`
    std::string member;   // role whose part is worked on, empty for all
    PartSet parts;
    std::set<std::size_t>
        uses;  // joint kinds by index, then part kinds with shapes: what the work belongs to
    std::vector<WorkAfter> after;      // as the joint or shape's definition says
    std::vector<MachineLimit> limits;  // what its machine was held against
    Span where;                        // in the definition
    std::array<Seconds, 5> waits{};    // by WaitFor: how long each takes after this work
};

}  // namespace rodwright
