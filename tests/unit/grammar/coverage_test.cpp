// Every rule of the grammar is needed by some sample.
#include <doctest/doctest.h>

#include <set>
#include <tao/pegtl/contrib/coverage.hpp>

#include "grammar/rules.hpp"
#include "rod_text.hpp"

namespace rodwright {
namespace {

bool is_named(std::string_view rule) {
    return rule.starts_with("rodwright::rules::") && rule.find('<') == std::string_view::npos;
}

// Rules that match only where there is a mistake.
const std::set<std::string_view> only_mistakes = {"rodwright::rules::broken", "rodwright::rules::spoiled",
                                                  "rodwright::rules::stray_brace"};

}  // namespace

TEST_SUITE("unit/grammar") {
    TEST_CASE("the samples use every rule of the grammar") {
        tao::pegtl::coverage_result result;
        for (const Sample& sample : samples()) {
            rules::Input in(sample.text.data(), sample.text.data() + sample.text.size(), "");
            CAPTURE(sample.name);
            CHECK(tao::pegtl::coverage<rules::file>(in, result));
        }
        std::size_t named = 0;
        for (const auto& [rule, info] : result) {
            if (!is_named(rule) || only_mistakes.contains(rule)) continue;
            CAPTURE(rule);
            CHECK(info.success > 0);
            ++named;
        }
        CHECK(named > 100);
    }
}

}  // namespace rodwright
