#include "tests/unit/property/rewrite.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "grammar/parse.hpp"

namespace rodwright::testing {

namespace {

struct Replacement {
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
    std::string text;
};

std::string replaced(const std::string& text, std::vector<Replacement> replacements) {
    std::sort(replacements.begin(), replacements.end(),
              [](const Replacement& a, const Replacement& b) { return a.begin < b.begin; });
    std::string result;
    std::uint32_t at = 0;
    for (const Replacement& each : replacements) {
        result.append(text, at, each.begin - at);
        result += each.text;
        at = each.end;
    }
    return result.append(text, at);
}

// The text as a tree, with all that the tree refers to.
class Parsed {
  public:
    explicit Parsed(const std::string& text) {
        Diagnostics diagnostics;
        const FileId file = sources_.add("design.rod", text);
        tree = parse(sources_, file, diagnostics);
        REQUIRE(diagnostics.list().empty());
    }
    Tree tree;

  private:
    SourceManager sources_;
};

// Fisher and Yates, by hand: std::shuffle is free to differ from one library to another.
void shuffle(std::vector<std::string>& texts, std::mt19937& random) {
    for (std::size_t i = texts.size(); i > 1; --i) std::swap(texts[i - 1], texts[random() % i]);
}

void shuffle_block(const Tree& tree, NodeId block, const std::vector<NodeKind>& kinds, std::mt19937& random,
                   std::vector<Replacement>& replacements) {
    std::vector<NodeId> statements;
    std::vector<std::string> texts;
    for (const NodeId child : tree.children(block)) {
        if (std::find(kinds.begin(), kinds.end(), tree.kind(child)) == kinds.end()) continue;
        statements.push_back(child);
        texts.emplace_back(tree.text(child));
    }
    shuffle(texts, random);
    for (std::size_t i = 0; i < statements.size(); ++i) {
        replacements.push_back({tree[statements[i]].begin, tree[statements[i]].end, texts[i]});
    }
}

}  // namespace

std::string shuffled(const std::string& text, const std::vector<NodeKind>& kinds, std::mt19937& random) {
    const Parsed parsed(text);
    std::vector<Replacement> replacements;
    for (std::uint32_t i = 0; i < parsed.tree.nodes().size(); ++i) {
        if (parsed.tree.kind(NodeId{i}) == NodeKind::block) {
            shuffle_block(parsed.tree, NodeId{i}, kinds, random, replacements);
        }
    }
    return replaced(text, std::move(replacements));
}

std::string with_numbers(const std::string& text,
                         const std::function<std::string(const std::string&)>& rewrite) {
    const Parsed parsed(text);
    std::vector<Replacement> replacements;
    for (const Node& node : parsed.tree.nodes()) {
        if (node.kind != NodeKind::number) continue;
        replacements.push_back(
            {node.begin, node.end, rewrite(text.substr(node.begin, node.end - node.begin))});
    }
    return replaced(text, std::move(replacements));
}

}  // namespace rodwright::testing
