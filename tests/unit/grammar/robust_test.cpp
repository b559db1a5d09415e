#include <doctest/doctest.h>

#include <random>

#include "rod_text.hpp"

namespace rodwright {
namespace {

// Every node lies within its parent and its children follow one another.
bool well_formed(const Tree& tree) {
    if (tree.empty() || tree.kind(tree.root()) != NodeKind::file) return false;
    for (std::uint32_t i = 0; i < tree.nodes().size(); ++i) {
        const Node& node = tree.nodes()[i];
        if (node.begin > node.end || node.end > tree.source().size() || node.after <= i) return false;
        for (const NodeId child : tree.children(NodeId{i})) {
            if (tree[child].begin < node.begin || tree[child].end > node.end) return false;
            if (tree[child].after > node.after) return false;
        }
    }
    return true;
}

void check_reading(const std::string& text) {
    const Parsed parsed(text);
    if (!well_formed(parsed.tree)) FAIL("the tree is not well formed:\n", text);
    const bool broken = parsed.count(NodeKind::broken) > 0;
    if (broken == parsed.diagnostics.ok()) FAIL("broken nodes and errors do not go together:\n", text);
    for (const Diagnostic& each : parsed.diagnostics.list()) {
        if (each.primary.end > text.size() || each.primary.begin > each.primary.end)
            FAIL("no such place:\n", text);
    }
    const std::string printed = print(parsed.tree);
    if (!parsed.diagnostics.ok()) return;
    const Parsed again(printed);
    if (meaning(again.tree) != meaning(parsed.tree)) FAIL("printing changed the meaning:\n", text);
    if (print(again.tree) != printed) FAIL("printing twice differs:\n", text);
}

}  // namespace

TEST_SUITE("unit/grammar") {
    TEST_CASE("every beginning of the samples is read to the end") {
        std::size_t tried = 0;
        for (const Sample& sample : samples()) {
            if (sample.text.size() > 3000) continue;
            for (std::size_t length = 0; length < sample.text.size(); ++length) {
                check_reading(sample.text.substr(0, length));
                ++tried;
            }
        }
        CHECK(tried > 4000);
    }

    TEST_CASE("samples with bytes changed are read to the end") {
        std::mt19937 random(20240611);
        const std::string bytes = "{}()[]\"'-=;,.\n\r \t/*+<>|:%a1x\xE2\x80\x9D\xFF";
        std::size_t tried = 0;
        for (const Sample& sample : samples()) {
            for (int round = 0; round < 150; ++round) {
                std::string text = sample.text;
                for (unsigned change = 0; change <= random() % 4; ++change) {
                    const std::size_t at = random() % text.size();
                    const char byte = bytes[random() % bytes.size()];
                    if (random() % 3 == 0) {
                        text.erase(at, 1 + random() % 3);
                    } else if (random() % 2 == 0) {
                        text.insert(at, 1, byte);
                    } else {
                        text[at] = byte;
                    }
                }
                check_reading(text);
                ++tried;
            }
        }
        CHECK(tried >= 450);
    }
}

}  // namespace rodwright
