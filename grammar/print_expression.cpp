#include "grammar/printer.hpp"
#include "grammar/scan.hpp"

namespace rodwright {
namespace {

Tightness tightness(const Tree& tree, NodeId node) {
    switch (tree.kind(node)) {
        case NodeKind::choice:
        case NodeKind::nearest:
            return Tightness::loose;
        case NodeKind::unary:
        case NodeKind::binary:
            return static_cast<Tightness>(precedence(tree.op(node)));
        default:
            return Tightness::tight;
    }
}

Tightness tighter(Tightness than) {
    return static_cast<Tightness>(static_cast<int>(than) + 1);
}

bool is_comparison(Operator op) {
    return precedence(op) == precedence(Operator::less);
}

// All operators associate to the left, and comparisons not at all.
void print_binary(Phrase& out, const Tree& tree, NodeId node) {
    const Operator op = tree.op(node);
    const Tightness own = tightness(tree, node);
    print_expression(out, tree, tree.child(node, 0), is_comparison(op) ? tighter(own) : own);
    out << " " << operator_text(op);
    out.soft_break();
    print_expression(out, tree, tree.child(node, 1), tighter(own));
}

// `- -a` is written -(-a): two signs together begin a comment.
void print_unary(Phrase& out, const Tree& tree, NodeId node) {
    const bool inverts = tree.op(node) == Operator::invert;
    out << (inverts ? "not " : "-");
    print_expression(out, tree, tree.child(node, 0), inverts ? tightness(tree, node) : Tightness::tight);
}

void print_copy(Phrase& out, const Tree& tree, NodeId node) {
    print_expression(out, tree, tree.child(node, 0), Tightness::tight);
    out << "[";
    std::string_view between;
    for (const NodeId child : tree.children(node)) {
        if (child == tree.child(node, 0)) continue;
        out << between;
        print_expression(out, tree, child);
        between = " ";
    }
    out << "]";
}

void print_member(Phrase& out, const Tree& tree, NodeId node) {
    print_expression(out, tree, tree.child(node, 0), Tightness::tight);
    out << "." << tree.text(tree.child(node, 1));
}

void print_argument(Phrase& out, const Tree& tree, NodeId node) {
    if (tree.kind(node) != NodeKind::argument) return print_expression(out, tree, node);
    if (tree.child_count(node) == 1) return print_expression(out, tree, tree.child(node, 0));
    out << tree.text(tree.child(node, 0)) << " = ";
    print_expression(out, tree, tree.child(node, 1));
}

void print_call(Phrase& out, const Tree& tree, NodeId node) {
    const NodeId name = tree.child(node, 0);
    out << tree.text(name) << "(";
    bool first = true;
    for (const NodeId child : tree.children(node)) {
        if (child == name) continue;
        if (!first) (out << ",").soft_break();
        print_argument(out, tree, child);
        first = false;
    }
    out << ")";
}

void print_choice(Phrase& out, const Tree& tree, NodeId node) {
    out << "if ";
    print_expression(out, tree, tree.child(node, 0));
    out << " then ";
    print_expression(out, tree, tree.child(node, 1));
    out << " else ";
    print_expression(out, tree, tree.child(node, 2));
}

void print_nearest(Phrase& out, const Tree& tree, NodeId node) {
    out << "nearest " << tree.text(tree.child(node, 0)) << " to ";
    print_expression(out, tree, tree.child(node, 1));
}

// Short, and easier to read in one piece.
void print_point(Phrase& out, const Tree& tree, NodeId node) {
    std::string_view before = "(";
    for (const NodeId child : tree.children(node)) {
        out << before;
        print_expression(out, tree, child);
        before = ", ";
    }
    out << ")";
}

void print_bare(Phrase& out, const Tree& tree, NodeId node) {
    switch (tree.kind(node)) {
        case NodeKind::binary:
            return print_binary(out, tree, node);
        case NodeKind::unary:
            return print_unary(out, tree, node);
        case NodeKind::copy:
            return print_copy(out, tree, node);
        case NodeKind::member:
            return print_member(out, tree, node);
        case NodeKind::call:
            return print_call(out, tree, node);
        case NodeKind::choice:
            return print_choice(out, tree, node);
        case NodeKind::nearest:
            return print_nearest(out, tree, node);
        case NodeKind::point:
            return print_point(out, tree, node);
        default:
            out << tree.text(node);
    }
}

bool begins_with_sign(const Tree& tree, NodeId node) {
    while (tree.kind(node) == NodeKind::binary) node = tree.child(node, 0);
    return tree.kind(node) == NodeKind::unary;
}

}  // namespace

void print_expression(Phrase& out, const Tree& tree, NodeId node, Tightness needed) {
    const bool parentheses = tightness(tree, node) < needed;
    if (parentheses) out << "(";
    print_bare(out, tree, node);
    if (parentheses) out << ")";
}

// A sign would make a difference of the two, and a word after a number could be its unit.
void print_operand(Phrase& out, const Tree& tree, NodeId node) {
    const char before = out.text.empty() ? ' ' : out.text.back();
    const bool number_before = before >= '0' && before <= '9';
    Phrase operand;
    print_expression(operand, tree, node, Tightness::sum);
    const bool unit = number_before && is_word_start(operand.text.front());
    out << " " << (unit || begins_with_sign(tree, node) ? "(" + operand.text + ")" : operand.text);
}

}  // namespace rodwright
