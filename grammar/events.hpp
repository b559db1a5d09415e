// What parse.cpp records while it reads and build.cpp turns into nodes: the nodes in reading order, but with
// operators, brackets and what follows a name (`.back`, `[left]`, arguments) still as they were written.
#pragma once

#include <cstdint>
#include <vector>

#include "grammar/tree.hpp"

namespace rodwright {

enum class EventKind : std::uint8_t {
#define RODWRIGHT_NODE(kind, word) kind,
#include "grammar/node_kinds.def"
#undef RODWRIGHT_NODE
    chain,           // operands and operators, in reading order
    bracketed,       // (a) or (a, b)
    call_arguments,  // after the name it belongs to
    minus_sign,      // before its operand
    not_sign,
    infix  // between its operands
};

struct Event {
    EventKind kind{};
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
    std::uint32_t after = 0;  // the index of the first event that is not within this one
};

// The nodes of a tree, in its order.
std::vector<Node> build_nodes(const std::vector<Event>& events, std::string_view text);

// The index of the first node that stands in more than `limit` others, or `nodes.size()`.
std::size_t first_too_deep(const std::vector<Node>& nodes, std::size_t limit);

}  // namespace rodwright
