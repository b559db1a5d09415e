#include "compiler/data/yaml_reader.hpp"

#include <doctest/doctest.h>

#include <random>
#include <string>

#include "compiler/limits.hpp"

using namespace rodwright;

namespace {

struct Outcome {
    std::optional<YamlNode> root;
    Diagnostics diagnostics;
    SourceManager sources;
};

void read(Outcome& outcome, std::string text) {
    const FileId file = outcome.sources.add("test.yaml", std::move(text));
    outcome.root = read_yaml(outcome.sources, file, outcome.diagnostics);
}

// The one diagnostic that reading `text` must give.
void check_refused(const std::string& text, Code code, std::size_t line, const std::string& message_part) {
    const std::string start = text.substr(0, 80);
    CAPTURE(start);
    Outcome outcome;
    read(outcome, text);
    CHECK_FALSE(outcome.root);
    REQUIRE(outcome.diagnostics.list().size() == 1);
    const Diagnostic& diagnostic = outcome.diagnostics.list()[0];
    CHECK(diagnostic.code == code);
    CHECK(outcome.sources.position(diagnostic.primary.file, diagnostic.primary.begin).line == line);
    CAPTURE(diagnostic.message);
    CHECK(diagnostic.message.find(message_part) != std::string::npos);
}

std::string repeated(const std::string& text, std::size_t times) {
    std::string all;
    for (std::size_t i = 0; i < times; ++i) all += text;
    return all;
}

}  // namespace

TEST_SUITE("unit/data") {
    TEST_CASE("yaml keeps order, text and places") {
        Outcome outcome;
        read(outcome, "b: 010\na: [yes, \"x y\", ~]\nc:\n  d: 3/4 in\n");
        REQUIRE(outcome.root);
        const YamlNode& root = *outcome.root;
        CHECK(root.kind == YamlKind::map);
        REQUIRE(root.children.size() == 3);
        CHECK(root.children[0].key == "b");
        CHECK(root.children[0].text == "010");
        CHECK(root.children[1].key == "a");
        REQUIRE(root.children[1].children.size() == 3);
        CHECK(root.children[1].children[0].text == "yes");
        CHECK(root.children[1].children[1].text == "x y");
        CHECK(root.children[1].children[2].kind == YamlKind::nothing);
        const YamlNode& deep = root.children[2].children.at(0);
        CHECK(outcome.sources.text(deep.span) == "3/4 in");
        CHECK(outcome.sources.text(deep.key_span) == "d");
        CHECK(outcome.sources.text(root.children[1].children[1].span) == "\"x y\"");
    }

    TEST_CASE("yaml places count bytes after a byte order mark and other letters") {
        Outcome outcome;
        read(outcome, "\xEF\xBB\xBF\"\xC3\xA4\": 1\r\nk: 2\r\n");
        REQUIRE(outcome.root);
        CHECK(outcome.sources.text(outcome.root->children.at(1).span) == "2");
        CHECK(outcome.sources.text(outcome.root->children.at(1).key_span) == "k");
    }

    TEST_CASE("yaml that is not as used here is refused with its place") {
        check_refused("a: 1\nb: 2\na: 3\n", Code::bad_data, 3, "twice");
        check_refused("a: &x 1\nb: *x\n", Code::bad_data, 1, "anchors");
        check_refused("a: 1\nb: *x\n", Code::bad_data, 2, "");
        check_refused("a: !thing 1\n", Code::bad_data, 1, "tags");
        check_refused("a: 1\n? [1, 2]\n: 3\n", Code::bad_data, 2, "a key is a word");
        check_refused("a: 1\n---\nb: 2\n", Code::bad_data, 1, "more follows");
        check_refused("", Code::bad_data, 1, "empty");
        check_refused("a: [1, 2\nb: 3\n", Code::bad_data, 2, "not YAML");
        check_refused("a: 1\nb: \xFF\n", Code::not_text, 2, "UTF-8");
        check_refused("a: \xED\xA0\x80\n", Code::not_text, 1, "UTF-8");
        check_refused(std::string("a: 1\nb: \0c\n", 11), Code::not_text, 2, "zero byte");
    }

    TEST_CASE("yaml limits") {
        check_refused(repeated("[", 200) + repeated("]", 200), Code::too_large, 1, "deep");
        check_refused("[" + repeated("a,\n", limits::yaml_nodes) + "]", Code::too_large, limits::yaml_nodes,
                      "values");
        check_refused("b: 1\na: [" + repeated("a,", limits::yaml_line / 2) + "]", Code::too_large, 2,
                      "line is longer");
        check_refused(std::string(limits::yaml_bytes + 1, ' '), Code::too_large, 1, "larger");
        // Never closed, and deeper than the library itself goes: refused somehow.
        Outcome open;
        read(open, repeated("[[[[[[[[\n", 10'000));
        CHECK_FALSE(open.root);
        CHECK(open.diagnostics.errors() == 1);
        Outcome outcome;
        read(outcome, repeated("[", limits::yaml_depth) + repeated("]", limits::yaml_depth));
        CHECK(outcome.root);
    }

    TEST_CASE("yaml: any bytes give a tree or a diagnostic with a place in the file") {
        const std::string alphabet = "a:-, []{}\"'\n\n  #&*!|>%@`?~1.\t\xC3\xA4\xFF\\";
        std::mt19937 random(20260);
        std::size_t trees = 0;
        for (int run = 0; run < 4000; ++run) {
            std::string text;
            const std::size_t length = random() % 60;
            for (std::size_t i = 0; i < length; ++i) text += alphabet[random() % alphabet.size()];
            Outcome outcome;
            read(outcome, text);
            CAPTURE(text);
            REQUIRE(outcome.root.has_value() == outcome.diagnostics.ok());
            if (outcome.root) ++trees;
            for (const Diagnostic& diagnostic : outcome.diagnostics.list()) {
                REQUIRE(diagnostic.primary.file == FileId{0});
                REQUIRE(diagnostic.primary.begin <= diagnostic.primary.end);
                REQUIRE(diagnostic.primary.end <= text.size());
            }
        }
        CHECK(trees > 50);
    }

    TEST_CASE("yaml: a broken copy of a good file never goes unnoticed into a crash") {
        const std::string good =
            "woods:\n  elm: {common: \"red elm\", density: 594}\n  # note\n  ash: [1, 2]\n";
        for (std::size_t at = 0; at < good.size(); ++at) {
            for (const char byte : {'\0', '\n', '[', '"', '\xFF', ':', '*'}) {
                std::string text = good;
                text[at] = byte;
                Outcome outcome;
                read(outcome, text);
                REQUIRE(outcome.root.has_value() == outcome.diagnostics.ok());
            }
        }
    }
}
