// What has to be done before what, and why.
#pragma once

#include <optional>
#include <vector>

#include "compiler/workplan/operations/work_item.hpp"

namespace rodwright {

struct OrderEdge {
    std::size_t before = 0;  // items
    std::size_t after = 0;
    Phrase because;  // may say nothing
    Seconds wait = 0;
    // Of order.yaml, and not of a joint or shape's own definition.
    const OrderRule* rule = nullptr;
    bool between_stages = false;  // the rule, if there is one, is told at the head of the stage
};

// Stages are set anew first: work that must follow a whole stage, or work of a later stage, is itself later
// than its name says. Two items wait for each other only where they are done to the same part, or where the
// definition of a joint says so of its own steps.
// `in_stages`: every item also waits for all of the stages before its own, whatever they are done to.
std::vector<OrderEdge> work_order(std::vector<WorkItem>& items, const OrderRules& rules,
                                  bool in_stages = false);

// Code::order_cycle for one circle among the edges, naming its work and what says that it must be so. Empty
// if there is none.
std::optional<Diagnostic> circle_in(const std::vector<WorkItem>& items, const std::vector<OrderEdge>& edges);

}  // namespace rodwright
