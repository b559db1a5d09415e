#include "grammar/tree.hpp"

#include <array>

namespace rodwright {

std::string_view kind_name(NodeKind kind) {
    static constexpr std::array names = {
#define RODWRIGHT_NODE(kind, word) std::string_view(#kind),
#include "grammar/node_kinds.def"
#undef RODWRIGHT_NODE
    };
    return names[static_cast<std::size_t>(kind)];
}

std::string_view kind_word(NodeKind kind) {
    static constexpr std::array words = {
#define RODWRIGHT_NODE(kind, word) std::string_view(word),
#include "grammar/node_kinds.def"
#undef RODWRIGHT_NODE
    };
    return words[static_cast<std::size_t>(kind)];
}

std::string_view operator_text(Operator op) {
    switch (op) {
        case Operator::none:
            return "";
        case Operator::add:
            return "+";
        case Operator::subtract:
        case Operator::negate:
            return "-";
        case Operator::multiply:
            return "*";
        case Operator::divide:
            return "/";
        case Operator::less:
            return "<";
        case Operator::less_equal:
            return "<=";
        case Operator::greater:
            return ">";
        case Operator::greater_equal:
            return ">=";
        case Operator::equal:
            return "==";
        case Operator::not_equal:
            return "!=";
        case Operator::both:
            return "and";
        case Operator::either:
            return "or";
        case Operator::invert:
            return "not";
    }
    return "";
}

int precedence(Operator op) {
    switch (op) {
        case Operator::none:
            return 0;
        case Operator::either:
            return 1;
        case Operator::both:
            return 2;
        case Operator::invert:
            return 3;
        case Operator::add:
        case Operator::subtract:
            return 5;
        case Operator::multiply:
        case Operator::divide:
            return 6;
        case Operator::negate:
            return 7;
        default:
            return 4;
    }
}

NodeId Tree::child(NodeId id, std::size_t n) const {
    for (const NodeId each : children(id)) {
        if (n-- == 0) return each;
    }
    return NodeId::none;
}

NodeId Tree::find(NodeId id, NodeKind wanted) const {
    for (const NodeId each : children(id)) {
        if (kind(each) == wanted) return each;
    }
    return NodeId::none;
}

std::size_t Tree::child_count(NodeId id) const {
    std::size_t count = 0;
    for ([[maybe_unused]] const NodeId each : children(id)) ++count;
    return count;
}

}  // namespace rodwright
