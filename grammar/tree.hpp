// The syntax tree of one .rod file: a flat, immutable list of nodes in reading order.
//
// A node owns the bytes [begin, end) of the text, without the blanks around it. Its descendants follow it
// directly, and `after` is the index of the first node that is not one of them. What children each kind has
// is said in rod.ebnf. A statement that could not be read is one `broken` node, and the error is already
// reported: later stages pass over it in silence. Comments are kept beside the tree.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "compiler/diagnostics/source.hpp"

namespace rodwright {

enum class NodeKind : std::uint8_t {
#define RODWRIGHT_NODE(kind, word) kind,
#include "grammar/node_kinds.def"
#undef RODWRIGHT_NODE
};

// The enumerator's own name ("side_of"), for dumps, and the maker's word for it, for messages.
std::string_view kind_name(NodeKind kind);
std::string_view kind_word(NodeKind kind);

enum class Operator : std::uint8_t {
    none,
    add,
    subtract,
    multiply,
    divide,
    negate,
    less,
    less_equal,
    greater,
    greater_equal,
    equal,      // ==
    not_equal,  // !=
    both,       // and
    either,     // or
    invert      // not
};

std::string_view operator_text(Operator op);
// How tightly a binary operator or `not` binds: 1 (or) to 6 (times), 7 for the sign before a value.
int precedence(Operator op);

enum class NodeId : std::uint32_t { none = 0xffffffffU };

struct Node {
    NodeKind kind{};
    Operator op = Operator::none;  // of `unary` and `binary`
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
    std::uint32_t after = 0;
};

// A comment, from its `--` to the end of its line (the line end not included).
struct Comment {
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
};

class Tree {
  public:
    Tree() = default;
    // `text` is the whole text of `file` and must outlive the tree.
    Tree(FileId file, std::string_view text, std::vector<Node> nodes, std::vector<Comment> comments)
        : file_(file), text_(text), nodes_(std::move(nodes)), comments_(std::move(comments)) {}

    FileId file() const { return file_; }
    std::string_view source() const { return text_; }
    const std::vector<Node>& nodes() const { return nodes_; }
    const std::vector<Comment>& comments() const { return comments_; }

    bool empty() const { return nodes_.empty(); }
    NodeId root() const { return empty() ? NodeId::none : NodeId{0}; }
    const Node& operator[](NodeId id) const { return nodes_[static_cast<std::uint32_t>(id)]; }
    NodeKind kind(NodeId id) const { return (*this)[id].kind; }
    Operator op(NodeId id) const { return (*this)[id].op; }
    Span span(NodeId id) const { return {file_, (*this)[id].begin, (*this)[id].end}; }
    std::string_view text(NodeId id) const {
        return text_.substr((*this)[id].begin, (*this)[id].end - (*this)[id].begin);
    }

    // Iterates over the direct children: for (NodeId child : tree.children(node)).
    class Children {
      public:
        class Iterator {
          public:
            Iterator(const Tree& tree, std::uint32_t at) : tree_(&tree), at_(at) {}
            NodeId operator*() const { return NodeId{at_}; }
            Iterator& operator++() {
                at_ = tree_->nodes_[at_].after;
                return *this;
            }
            friend bool operator==(const Iterator& a, const Iterator& b) { return a.at_ == b.at_; }

          private:
            const Tree* tree_;
            std::uint32_t at_;
        };
        Children(const Tree& tree, std::uint32_t first, std::uint32_t last)
            : tree_(&tree), first_(first), last_(last) {}
        Iterator begin() const { return {*tree_, first_}; }
        Iterator end() const { return {*tree_, last_}; }

      private:
        const Tree* tree_;
        std::uint32_t first_;
        std::uint32_t last_;
    };
    Children children(NodeId id) const {
        const auto at = static_cast<std::uint32_t>(id);
        return {*this, at + 1, nodes_[at].after};
    }

    // The n-th child, or the first child of a kind; NodeId::none if there is none.
    NodeId child(NodeId id, std::size_t n) const;
    NodeId find(NodeId id, NodeKind kind) const;
    std::size_t child_count(NodeId id) const;

  private:
    FileId file_ = FileId::none;
    std::string_view text_;
    std::vector<Node> nodes_;
    std::vector<Comment> comments_;
};

}  // namespace rodwright
