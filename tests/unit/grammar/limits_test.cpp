#include <doctest/doctest.h>

#include "compiler/limits.hpp"
#include "rod_text.hpp"

namespace rodwright {
namespace {

std::string repeated(const std::string& text, std::size_t count) {
    std::string out;
    for (std::size_t i = 0; i < count; ++i) out += text;
    return out;
}

// What stands within one another, `count` times.
struct Nest {
    const char* before;
    const char* open;
    const char* middle;
    const char* close;

    std::string text(std::size_t count) const {
        return before + repeated(open, count) + middle + repeated(close, count);
    }
};

const Nest nests[] = {{"x = ", "(", "1", ")"},
                      {"x = ", "f(", "1", ")"},
                      {"x = ", "a[", "1", "]"},
                      {"x = ", "if a then b else ", "1", ""},
                      {"x = ", "nearest bit to ", "1", ""},
                      {"", "part a {", "", "}"},
                      {"if a {} else ", "if b {} else ", "{}", ""}};

const char* const too_deep = "more than 120 brackets and blocks stand within one another";

}  // namespace

TEST_SUITE("unit/grammar") {
    TEST_CASE("nesting is bounded, whatever it is made of") {
        REQUIRE(limits::nesting == 120);
        for (const Nest& nest : nests) {
            CAPTURE(nest.open);
            CHECK(Parsed(nest.text(limits::nesting - 3)).report() == "");
            const Parsed deep(nest.text(limits::nesting + 1));
            REQUIRE(deep.diagnostics.list().size() == 1);
            CHECK(deep.diagnostics.list()[0].message == too_deep);
            CHECK(deep.diagnostics.list()[0].code == Code::too_large);
            const Parsed deepest(nest.text(100'000));
            CHECK(deepest.diagnostics.list().at(0).message == too_deep);
        }
    }

    TEST_CASE("operations that hang on one another are bounded") {
        for (const char* more : {" + 1", ".a", "[1]"}) {
            CAPTURE(more);
            CHECK(Parsed("x = a" + repeated(more, limits::tree_depth - 10)).report() == "");
            const Parsed deep("x = a" + repeated(more, 100'000));
            REQUIRE(deep.diagnostics.list().size() == 1);
            CHECK(deep.diagnostics.list()[0].message == "more than 1000 operations hang on one another");
            CHECK(deep.tree.nodes().size() == 2);
        }
        CHECK(Parsed("x = " + repeated("- ", 100'000) + "1").diagnostics.errors() == 1);
        CHECK(Parsed("require " + repeated("not ", 100'000) + "a").diagnostics.errors() == 1);
    }

    TEST_CASE("the digits of a number are bounded") {
        CHECK(Parsed("x = " + repeated("1", limits::number_digits)).report() == "");
        CHECK(Parsed("x = " + repeated("1", 30) + "/" + repeated("2", 11)).report() ==
              "1:5-42 E0104 a number has more than 40 digits\n");
    }

    TEST_CASE("the size of a file is bounded") {
        CHECK(Parsed(std::string(limits::file_bytes, '\n')).report() == "");
        CHECK(Parsed(std::string(limits::file_bytes + 1, '\n')).report() ==
              "1:1-0 E0104 the file has 2097153 bytes; a design file may have 2097152 | help: write what "
              "stands "
              "there many times once, as a row or an `assembly`\n");
    }
}

}  // namespace rodwright
