#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <string>
#include <vector>

#include "tests/unit/structure/source_tree.hpp"

using namespace rodwright::testing;

namespace {

const std::vector<std::string> code_folders = {"compiler", "grammar", "backends", "tests"};

// The texts between double quotes in one line of C++, escapes left as they are; comments are passed over.
std::vector<std::string> quoted_in(const std::string& line) {
    std::vector<std::string> found;
    std::size_t begin = std::string::npos;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const bool inside = begin != std::string::npos;
        if (!inside && line.compare(i, 2, "//") == 0) break;
        if (inside && line[i] == '\\') {
            ++i;
        } else if (line[i] == '"') {
            if (inside) found.push_back(line.substr(begin, i - begin));
            begin = inside ? std::string::npos : i + 1;
        }
    }
    return found;
}

std::set<std::string> library_names() {
    std::set<std::string> names;
    for (const std::string folder : {"stdlib/joints", "stdlib/shapes"})
        for (const std::string& file : entries_of(folder)) names.insert(file.substr(0, file.rfind('.')));
    return names;
}

// The first line that is not blank and not `#pragma once` is a comment.
bool begins_with_comment(const std::string& text) {
    for (const std::string& line : lines_of(text)) {
        if (line.empty() || line == "#pragma once") continue;
        return line.starts_with("//");
    }
    return false;
}

}  // namespace

TEST_SUITE("unit/structure") {
    TEST_CASE("nothing lies at the top but what belongs there") {
        const std::set<std::string> expected = {"CMakeLists.txt", "DEVELOPERS.md", "README.md",
                                                "backends",       "compiler",      "examples",
                                                "grammar",        "stdlib",        "tests"};
        std::set<std::string> found;
        for (const std::string& name : entries_of("."))
            if (!name.starts_with("build")) found.insert(name);
        CHECK(found == expected);
    }

    TEST_CASE("the compiler and the backends name no joint and no shape of the library") {
        const auto names = library_names();
        REQUIRE(names.count("mortise_and_tenon") == 1);
        // A function of the language that has a shape's name, and dowels by the length as a dealer sells
        // them: the trade's words for both.
        const std::set<std::pair<std::string, std::string>> other_meaning = {
            {"compiler/evaluate/functions.cpp", "round"}, {"compiler/stock/rack/read_rack.cpp", "dowels"}};
        std::set<std::pair<std::string, std::string>> met;
        for (const SourceFile& file :
             source_files({"compiler", "grammar", "backends"}, {".hpp", ".cpp", ".def"})) {
            for (const std::string& line : lines_of(file.text))
                for (const std::string& text : quoted_in(line))
                    if (names.count(text) == 1) met.insert({file.path, text});
        }
        CHECK(met == other_meaning);
    }

    TEST_CASE("quoted texts are found") {
        CHECK(quoted_in(R"(f("a", "b\"c"); // "d")") == std::vector<std::string>{"a", R"(b\"c)"});
        CHECK(quoted_in("int a = b / c;").empty());
    }

    TEST_CASE("no file is longer than 600 lines") {
        for (const SourceFile& file : source_files(code_folders, {".hpp", ".cpp", ".def", ".cmake"})) {
            CAPTURE(file.path);
            CHECK(lines_of(file.text).size() <= 600);
        }
    }

    TEST_CASE("every header says what it is for before its first declaration") {
        const auto headers = source_files(code_folders, {".hpp", ".def"});
        REQUIRE(headers.size() > 50);
        for (const SourceFile& header : headers) {
            CAPTURE(header.path);
            CHECK(begins_with_comment(header.text));
        }
    }

    TEST_CASE("no test is without its suite's folder name") {
        for (const SourceFile& test : source_files({"tests/unit", "tests/reference"}, {"_test.cpp"})) {
            const std::string suite = test.path.substr(6, test.path.rfind('/') - 6);
            CAPTURE(test.path);
            CHECK((test.text.find("TEST_SUITE(\"" + suite + "\")") != std::string::npos ||
                   test.text.find("TEST_SUITE_BEGIN(\"" + suite + "\")") != std::string::npos));
        }
    }

    TEST_CASE("every example is a folder with its design of the same name") {
        for (const std::string& name : entries_of("examples")) {
            if (name == "run") continue;
            CAPTURE(name);
            CHECK(std::filesystem::exists(std::string(RODWRIGHT_SOURCE_DIR "/examples/") + name + "/" + name +
                                          ".rod"));
        }
    }
}
