// The sheets of a packet, each kind made by one function.
#pragma once

#include <vector>

#include "backends/packet/context.hpp"

namespace rodwright::packet {

// The cover: `others` are the sheets that follow it, already numbered.
Draft cover_sheet(const Context& context, const std::vector<Draft>& others);
Draft arrangement_sheet(const Context& context);
// One sheet for the kind and its mirror images; more where its table of sizes does not fit.
std::vector<Draft> part_sheets(const Context& context, KindId kind);
std::vector<Draft> cut_list_sheets(const Context& context);
std::vector<Draft> step_sheets(const Context& context);

// All of them in order, numbered, with their title blocks drawn.
std::vector<drawing::Sheet> packet_sheets(const Context& context);

}  // namespace rodwright::packet
