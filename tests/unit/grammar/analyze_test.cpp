// PEGTL's own check of the grammar; in a file of its own, since it takes long to compile.
#include <doctest/doctest.h>

#include <tao/pegtl/contrib/analyze.hpp>

#include "grammar/rules.hpp"

namespace tao::pegtl {

template <typename Name, auto Reader>
struct analyze_traits<Name, rodwright::rules::leaf<Reader>> : analyze_any_traits<> {};
template <typename Name, rodwright::rules::LineEnds Ends>
struct analyze_traits<Name, rodwright::rules::blanks<Ends>> : analyze_opt_traits<> {};
template <typename Name, typename Derived, typename Rule>
struct analyze_traits<Name, rodwright::rules::around<Derived, Rule>>
    : analyze_traits<Name, typename seq<Rule>::rule_t> {};

}  // namespace tao::pegtl

TEST_SUITE("unit/grammar") {
    TEST_CASE("no rule runs in a circle without reading anything") {
        CHECK(tao::pegtl::analyze<rodwright::rules::file>(-1) == 0);
    }
}
