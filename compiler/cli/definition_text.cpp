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

// The words of a comment that stands on the same line behind `node`, and on it alone.
std::string comment_behind(const Tree& tree, NodeId node) {
    const std::uint32_t end = tree[node].end;
    for (const Comment& comment : tree.comments()) {
        if (comment.begin < end) continue;
        const std::string_view between = tree.source().substr(end, comment.begin - end);
        if (between.find_first_not_of(" \t") != std::string_view::npos) return {};
        std::string_view words = tree.source().substr(comment.begin, comment.end - comment.begin);
        words.remove_prefix(std::min(words.find_first_not_of("- "), words.size()));
        return std::string(words);
    }
    return {};
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

std::string parameters(const Tree& tree, NodeId block) {
    std::vector<Row> rows;
    for (const NodeId statement : tree.children(block)) {
        if (tree.kind(statement) != NodeKind::equation) continue;
        rows.push_back({std::string(tree.text(tree.child(statement, 0))),
                        std::string(tree.text(tree.child(statement, 1))), comment_behind(tree, statement)});
    }
    return rows.empty() ? "" : "\nParameters and their defaults:\n" + aligned(rows);
}

// The statements of one of `kinds` at any depth, as written.
std::string statements(const Tree& tree, NodeId block, const char* heading,
                       std::initializer_list<NodeKind> kinds) {
    std::string text;
    const auto first = static_cast<std::uint32_t>(block);
    for (std::uint32_t at = first; at < tree[block].after; ++at) {
        const NodeId node{at};
        const bool wanted = std::find(kinds.begin(), kinds.end(), tree.kind(node)) != kinds.end();
        if (wanted) text += fmt::format("  {}\n", tree.text(node));
    }
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
    text.details += parameters(tree, block);
    text.details += statements(tree, block, "What is cut",
                               {NodeKind::extend, NodeKind::leave, NodeKind::remove, NodeKind::trim,
                                NodeKind::blend, NodeKind::bevel});
    text.details += statements(tree, block, "How it goes together", {NodeKind::slides, NodeKind::glue});
    text.details += statements(tree, block, "What is checked", {NodeKind::check});
    text.details += statements(tree, block, "What it takes", {NodeKind::needs, NodeKind::supply});
    return text;
}

}  // namespace rodwright
