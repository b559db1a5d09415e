// Limits of data files.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/data/yaml_reader.hpp"
#include "compiler/limits.hpp"
#include "tests/unit/limits/refused.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

bool is_read(std::string text) {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("data.yaml", std::move(text));
    return read_yaml(sources, file, diagnostics).has_value() && diagnostics.ok();
}

std::string yaml_refusal(std::string text) {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("data.yaml", std::move(text));
    CHECK_FALSE(read_yaml(sources, file, diagnostics));
    return first_of(Code::too_large, diagnostics, sources);
}

// A list with so many numbers, a line each.
std::string list(std::size_t count) {
    return repeated("- 1\n", count);
}

std::string nested(std::size_t depth) {
    return repeated("[", depth) + repeated("]", depth) + "\n";
}

// One value and comments up to that many bytes, in lines of 100.
std::string yaml_of_bytes(std::size_t bytes) {
    const std::string line = "#" + std::string(98, '-') + "\n";
    std::string text = "a: 1\n" + repeated(line, (bytes - 5) / line.size());
    return text + std::string(bytes - text.size(), '\n');
}

}  // namespace

TEST_SUITE("unit/limits") {
    TEST_CASE("yaml_bytes: one data file") {
        CHECK(is_read(yaml_of_bytes(limits::yaml_bytes)));
        CHECK(yaml_refusal(yaml_of_bytes(limits::yaml_bytes + 1)) ==
              fmt::format("1:1 this file is larger than {} bytes", limits::yaml_bytes));
    }

    TEST_CASE("yaml_nodes: values of one data file") {
        // The list is one of them.
        CHECK(is_read(list(limits::yaml_nodes - 1)));
        CHECK(
            yaml_refusal(list(limits::yaml_nodes)) ==
            fmt::format("{}:3 this file holds more than {} values", limits::yaml_nodes, limits::yaml_nodes));
    }

    TEST_CASE("yaml_depth: lists within lists") {
        CHECK(is_read(nested(limits::yaml_depth)));
        CHECK(yaml_refusal(nested(limits::yaml_depth + 1)) ==
              fmt::format("1:{} this file is nested more than {} deep", limits::yaml_depth + 1,
                          limits::yaml_depth));
    }

    TEST_CASE("yaml_line: one line of a data file") {
        const std::string key = "a: ";
        CHECK(is_read(key + std::string(limits::yaml_line - key.size(), 'x') + "\n"));
        CHECK(yaml_refusal("b: 1\n" + key + std::string(limits::yaml_line - key.size() + 1, 'x') + "\n") ==
              fmt::format("2:1 this line is longer than {} bytes", limits::yaml_line));
    }
}
