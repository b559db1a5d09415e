#include <doctest/doctest.h>

#include <set>
#include <string>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/diagnostics/source.hpp"
#include "compiler/stdlib.hpp"
#include "grammar/parse.hpp"

using namespace rodwright;

namespace {

std::size_t count(std::string_view text, std::string_view words) {
    std::size_t found = 0;
    for (std::size_t at = 0; (at = text.find(words, at)) != std::string_view::npos; at += words.size())
        ++found;
    return found;
}

// The text of the fenced block after the line that begins with `heading`.
std::string example(const std::string& page, const std::string& heading) {
    const std::size_t begin = page.find("```", page.find("\n" + heading));
    if (begin == std::string::npos) return {};
    const std::size_t first = page.find('\n', begin) + 1;
    return page.substr(first, page.find("```", first) - first);
}

}  // namespace

TEST_SUITE("unit/diagnostics") {
    TEST_CASE("codes are unique, in order, and begin with the letter of their severity") {
        std::string number_before;
        std::set<std::string_view> names;
        for (const CodeInfo& each : all_codes()) {
            CAPTURE(each.code);
            REQUIRE(each.code.size() == 5);
            CHECK(each.code.front() == (each.severity == Severity::error ? 'E' : 'W'));
            const std::string number(each.code.substr(1));
            CHECK(number > number_before);
            CHECK(number.find_first_not_of("0123456789") == std::string::npos);
            CHECK(names.insert(each.id_name).second);
            CHECK(&info(each.id) == &each);
            number_before = number;
        }
    }

    TEST_CASE("titles begin in lower case and have no full stop") {
        for (const CodeInfo& each : all_codes()) {
            CAPTURE(each.title);
            CHECK(each.title.back() != '.');
            CHECK((each.title.front() < 'A' || each.title.front() > 'Z'));
        }
    }

    TEST_CASE("a code is found in any case") {
        REQUIRE(find_code("e0302") != nullptr);
        CHECK(find_code("e0302")->id == Code::lines_disagree);
        CHECK(find_code("E9999") == nullptr);
        CHECK(find_code("") == nullptr);
    }

    TEST_CASE("every code has a page and every page a code") {
        std::set<std::string> pages, codes;
        for (const EmbeddedFile& page : explain_files()) pages.insert(page.path);
        for (const CodeInfo& each : all_codes()) codes.insert(std::string(each.code) + ".md");
        CHECK(pages == codes);
    }

    TEST_CASE("a page has its code, its title, a wrong example and a right one") {
        for (const EmbeddedFile& page : explain_files()) {
            CAPTURE(page.path);
            const CodeInfo* code = find_code(page.path.substr(0, 5));
            REQUIRE(code != nullptr);
            CHECK(page.text.starts_with("# " + std::string(code->code) + ": " + std::string(code->title) +
                                        "\n"));
            CHECK(count(page.text, "\nWrong") == 1);
            CHECK(count(page.text, "\nRight") == 1);
            CHECK(count(page.text, "```") == 4);
            CHECK_FALSE(example(page.text, "Wrong").empty());
            CHECK_FALSE(example(page.text, "Right").empty());
        }
    }

    TEST_CASE("the right example of every page that is in .rod can be read") {
        for (const EmbeddedFile& page : explain_files()) {
            if (page.text.find("```rod", page.text.find("\nRight")) == std::string::npos) continue;
            CAPTURE(page.path);
            SourceManager sources;
            Diagnostics diagnostics;
            parse(sources, sources.add(page.path, example(page.text, "Right")), diagnostics);
            for (const Diagnostic& each : diagnostics.list()) FAIL_CHECK(each.message);
        }
    }
}
