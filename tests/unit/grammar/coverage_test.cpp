// Every rule of the grammar is needed by some sample.
#include <doctest/doctest.h>

#include <map>
#include <set>
#include <tao/pegtl/visit.hpp>

#include "grammar/rules.hpp"
#include "rod_text.hpp"

namespace rodwright {
namespace {

template <typename Rule>
bool succeeded = false;

template <typename Rule>
struct Note : tao::pegtl::normal<Rule> {
    template <typename... Arguments>
    static void success(const Arguments&... /*unused*/) noexcept {
        succeeded<Rule> = true;
    }
};

// The rules that the grammar names itself; what they are made of is PEGTL's.
template <typename Rule>
struct Collect {
    static void visit(std::map<std::string_view, bool>& rules) {
        const std::string_view name = tao::pegtl::demangle<Rule>();
        const bool named = name.starts_with("rodwright::rules::") && name.find('<') == std::string_view::npos;
        if (named) rules[name] = succeeded<Rule>;
    }
};

// Rules that match only where there is a mistake.
const std::set<std::string_view> only_mistakes = {"rodwright::rules::broken", "rodwright::rules::spoiled",
                                                  "rodwright::rules::stray_brace"};

}  // namespace

TEST_SUITE("unit/grammar") {
    TEST_CASE("the samples use every rule of the grammar") {
        for (const Sample& sample : samples()) {
            rules::Input in(sample.text.data(), sample.text.data() + sample.text.size(), "");
            CAPTURE(sample.name);
            CHECK(tao::pegtl::parse<rules::file, tao::pegtl::nothing, Note>(in));
        }
        std::map<std::string_view, bool> found;
        tao::pegtl::visit<rules::file, Collect>(found);
        CHECK(found.size() > 100);
        for (const auto& each : found) {
            const std::string_view rule = each.first;
            CAPTURE(rule);
            CHECK((each.second || only_mistakes.contains(rule)));
        }
    }
}

}  // namespace rodwright
