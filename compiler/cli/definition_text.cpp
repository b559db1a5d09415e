#include "compiler/cli/definition_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace rodwright {

namespace {

struct Row {
    std::string name;
    std::string value;
    std::string comment;
};

bool only_blanks(std::string_view text) {
    return text.find_first_not_of(" \t") == std::string_view::npos;
}

std::string_view words_of(const Tree& tree, const Comment& comment) {
    std::string_view words = tree.source().substr(comment.begin, comment.end - comment.begin);
    words.remove_prefix(std::min(words.find_first_not_of("- "), words.size()));
    return words;
}

// Whether a comment has its line to itself, and the next line is the one that begins at or before `at`.
bool stands_above(const Tree& tree, const Comment& comment, std::uint32_t at) {
    const std::string_view source = tree.source();
    const std::size_t line = source.rfind('\n', comment.begin) + 1;
    if (!only_blanks(source.substr(line, comment.begin - line))) return false;
    const std::string_view between = source.substr(comment.end, at - comment.end);
    return between.starts_with('\n') && only_blanks(between.substr(1));
}

// What comments say of a statement: those in the lines right above it, then the one behind it.
std::string comments_on(const Tree& tree, NodeId node) {
    const auto& comments = tree.comments();
    std::uint32_t begin = tree[node].begin;
    std::string text;
    const auto join = [&](std::string_view first, std::string_view second) {
        return fmt::format("{}{}{}", first, first.empty() || second.empty() ? "" : " ", second);
    };
    for (auto comment = comments.rbegin(); comment != comments.rend(); ++comment) {
        if (comment->begin >= tree[node].end) {
            const std::string_view between =
                tree.source().substr(tree[node].end, comment->begin - tree[node].end);
            if (only_blanks(between)) text = words_of(tree, *comment);
        } else if (comment->begin < begin) {
            if (!stands_above(tree, *comment, begin)) break;
            text = join(words_of(tree, *comment), text);
            begin = comment->begin;
        }
    }
    return text;
}

std::string without_quotes(std::string_view text) {
    return std::string(text.size() < 2 ? text : text.substr(1, text.size() - 2));
}

std::string signature(const Tree& tree, NodeId definition) {
    std::string members;
    for (const NodeId child : tree.children(definition)) {
        if (tree.kind(child) != NodeKind::member_decl) continue;
        members += fmt::format("{}{}: {}", members.empty() ? "" : ", ", tree.text(tree.child(child, 0)),
                               tree.text(tree.child(child, 1)));
    }
    return fmt::format("{}({})", tree.text(tree.child(definition, 0)), members);
}

std::string aligned(const std::vector<Row>& rows) {
    std::size_t names = 0, values = 0;
    for (const Row& row : rows) {
        names = std::max(names, row.name.size());
        values = std::max(values, std::min<std::size_t>(row.value.size(), 40));
    }
    std::string text;
    for (const Row& row : rows) {
        const std::string comment = row.comment.empty() ? "" : "  -- " + row.comment;
        const std::size_t width = comment.empty() ? 0 : values;
        text += fmt::format("  {:{}} = {:{}}{}\n", row.name, names, row.value, width, comment);
    }
    return text;
}

// The names that statements of one kind, at any depth, give values to.
std::string values(const Tree& tree, NodeId block, const char* heading, NodeKind kind) {
    std::vector<Row> rows;
    const auto first = static_cast<std::uint32_t>(block);
    for (std::uint32_t at = first; at < tree[block].after; ++at) {
        const NodeId node{at};
        if (tree.kind(node) != kind) continue;
        rows.push_back({std::string(tree.text(tree.child(node, 0))),
                        std::string(tree.text(tree.child(node, 1))), comments_on(tree, node)});
    }
    return rows.empty() ? "" : fmt::format("\n{}:\n{}", heading, aligned(rows));
}

// As written, but every further line begins `indent` blanks in.
std::string indented(std::string_view text, std::size_t indent) {
    std::string result;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find('\n', begin), text.size());
        std::string_view line = text.substr(begin, end - begin);
        if (begin > 0) {
            line.remove_prefix(std::min(line.find_first_not_of(' '), line.size()));
            result += '\n' + std::string(indent, ' ');
        }
        result += line;
        begin = end + 1;
    }
    return result;
}

// The name of a step, the member it is done to, and its text.
std::string step_line(const Tree& tree, NodeId step) {
    const NodeId member = tree.find(step, NodeKind::of_member);
    const NodeId text = tree.find(step, NodeKind::string);
    return fmt::format("{}{}{}: {}", tree.text(tree.child(step, 0)), member == NodeId::none ? "" : " ",
                       member == NodeId::none ? "" : tree.text(member),
                       text == NodeId::none ? "" : without_quotes(tree.text(text)));
}

class Listing {
  public:
    Listing(const Tree& tree, std::initializer_list<NodeKind> kinds) : tree_(tree), kinds_(kinds) {}

    // The statements of a block that are of the kinds, those under a condition below it.
    std::string of(NodeId block, std::size_t indent) const {
        std::string text;
        for (const NodeId node : tree_.children(block)) {
            if (tree_.kind(node) == NodeKind::if_statement) {
                text += condition(node, indent, "if");
            } else if (std::find(kinds_.begin(), kinds_.end(), tree_.kind(node)) != kinds_.end()) {
                text += std::string(indent, ' ') + line(node, indent + 4) + '\n';
            }
        }
        return text;
    }

  private:
    const Tree& tree_;
    std::vector<NodeKind> kinds_;

    std::string line(NodeId node, std::size_t indent) const {
        return tree_.kind(node) == NodeKind::step ? step_line(tree_, node)
                                                  : indented(tree_.text(node), indent);
    }

    std::string condition(NodeId node, std::size_t indent, std::string_view word) const {
        const std::string inside = of(tree_.child(node, 1), indent + 2);
        const std::string otherwise = alternative(tree_.child(node, 2), indent);
        if (inside.empty() && otherwise.empty()) return {};
        return fmt::format("{:{}}{} {}:\n{}{}", "", indent, word, tree_.text(tree_.child(node, 0)), inside,
                           otherwise);
    }

    std::string alternative(NodeId node, std::size_t indent) const {
        if (node == NodeId::none) return {};
        if (tree_.kind(node) == NodeKind::if_statement) return condition(node, indent, "else if");
        const std::string inside = of(node, indent + 2);
        return inside.empty() ? "" : fmt::format("{:{}}else:\n{}", "", indent, inside);
    }
};

std::string statements(const Tree& tree, NodeId block, const char* heading,
                       std::initializer_list<NodeKind> kinds) {
    const std::string text = Listing(tree, kinds).of(block, 2);
    return text.empty() ? "" : fmt::format("\n{}:\n{}", heading, text);
}

std::string summary(const Tree& tree, NodeId block) {
    const NodeId doc = tree.find(block, NodeKind::doc);
    return doc == NodeId::none ? "" : without_quotes(tree.text(doc));
}

}  // namespace

DefinitionText definition_text(const Tree& tree, NodeId definition) {
    const NodeId block = tree.find(definition, NodeKind::block);
    DefinitionText text{std::string(tree.text(tree.child(definition, 0))), summary(tree, block), ""};
    text.details =
        fmt::format("{} {}\n\n  {}\n", tree.kind(definition) == NodeKind::joint ? "joint" : "shape",
                    signature(tree, definition), text.summary);
    text.details += values(tree, block, "Parameters and their defaults", NodeKind::equation);
    text.details += values(tree, block, "Worked out from them", NodeKind::let);
    text.details += statements(tree, block, "What is cut",
                               {NodeKind::extend, NodeKind::leave, NodeKind::remove, NodeKind::trim,
                                NodeKind::blend, NodeKind::bevel});
    text.details += statements(tree, block, "How it goes together", {NodeKind::slides, NodeKind::glue});
    text.details += statements(tree, block, "What is checked", {NodeKind::check});
    text.details += statements(tree, block, "What it takes", {NodeKind::needs, NodeKind::supply});
    text.details += statements(tree, block, "Steps", {NodeKind::step});
    return text;
}

}  // namespace rodwright
