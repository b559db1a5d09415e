// That no limit is without a case here.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "tests/unit/structure/source_tree.hpp"

using namespace rodwright::testing;

namespace {

// What compiler/limits.hpp names.
std::vector<std::string> limit_names() {
    std::vector<std::string> names;
    const std::string declaration = "inline constexpr std::size_t ";
    for (const std::string& line : lines_of(source_file("compiler/limits.hpp").text)) {
        if (!line.starts_with(declaration)) continue;
        names.push_back(
            line.substr(declaration.size(), line.find(' ', declaration.size()) - declaration.size()));
    }
    return names;
}

// The texts from one TEST_CASE to the next in this folder.
std::vector<std::string> cases() {
    const std::string begin = "TEST_CASE(\"";
    std::vector<std::string> found;
    for (const SourceFile& file : source_files({"tests/unit/limits"}, {"_test.cpp"})) {
        for (std::size_t at = file.text.find(begin); at != std::string::npos;) {
            const std::size_t next = file.text.find(begin, at + 1);
            found.push_back(file.text.substr(at + begin.size(), next - at - begin.size()));
            at = next;
        }
    }
    return found;
}

}  // namespace

TEST_SUITE("unit/limits") {
    TEST_CASE("every limit has a case of its name that uses it") {
        const std::vector<std::string> names = limit_names();
        REQUIRE(std::ranges::count(names, "file_bytes") == 1);
        REQUIRE(names.size() > 15);
        const std::vector<std::string> all = cases();
        for (const std::string& name : names) {
            CAPTURE(name);
            CHECK(std::ranges::any_of(all, [&](const std::string& text) {
                return text.starts_with(name + ": ") && text.find("limits::" + name) != std::string::npos;
            }));
        }
    }
}
