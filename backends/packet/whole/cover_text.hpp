// What the cover says beside the picture.
#pragma once

#include <span>

#include "backends/drawing/text_flow.hpp"
#include "backends/packet/context.hpp"

namespace rodwright::packet {

// Sizes, parts, wood, mass, finish, what to look out for.
std::vector<drawing::FlowBlock> cover_facts(const Context& context);

// Which sheet shows what; the sheets of parts by their letters.
drawing::FlowBlock page_list(std::span<const Draft> others);

}  // namespace rodwright::packet
