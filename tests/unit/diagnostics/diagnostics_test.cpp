#include <doctest/doctest.h>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/diagnostics/render.hpp"
#include "compiler/limits.hpp"

using namespace rodwright;

namespace {

Span at(std::uint32_t offset, std::uint32_t file = 0) {
    return {FileId{file}, offset, offset + 1};
}

}  // namespace

TEST_SUITE("unit/diagnostics") {
    TEST_CASE("a repeat of the same code at the same place is dropped") {
        Diagnostics all;
        all.add(diagnose(Code::unknown_name, at(3), "first"));
        all.add(diagnose(Code::unknown_name, at(3), "second"));
        all.add(diagnose(Code::bad_argument, at(3), "another code"));
        all.add(diagnose(Code::unknown_name, at(4), "another place"));
        CHECK(all.list().size() == 3);
        CHECK(all.errors() == 3);
    }

    TEST_CASE("what is in no file is told apart by its words") {
        Diagnostics all;
        all.add(diagnose(Code::cannot_write, {}, "a"));
        all.add(diagnose(Code::cannot_write, {}, "b"));
        all.add(diagnose(Code::cannot_write, {}, "b"));
        CHECK(all.list().size() == 2);
    }

    TEST_CASE("one line of a joint is another place in each join that uses it") {
        Diagnostics all;
        for (const std::uint32_t join : {10U, 20U, 20U}) {
            Diagnostic made = diagnose(Code::joint_check, at(3), "thin");
            made.trace.push_back({at(join), "used by a join"});
            all.add(made);
        }
        CHECK(all.list().size() == 2);
    }

    TEST_CASE("warnings leave a run clean, errors do not") {
        Diagnostics all;
        all.add(diagnose(Code::joint_check, at(1), "w"));
        CHECK(all.ok());
        CHECK(summary(all) == "1 warning");
        all.add(diagnose(Code::unknown_name, at(1), "e"));
        all.add(diagnose(Code::unknown_name, at(2), "e"));
        CHECK_FALSE(all.ok());
        CHECK(summary(all) == "2 errors, 1 warning");
    }

    TEST_CASE("past the limit nothing more is kept, but an error displaces a warning") {
        Diagnostics all;
        for (std::uint32_t i = 0; i < limits::diagnostics; ++i)
            all.add(diagnose(Code::joint_check, at(i), "w"));
        all.add(diagnose(Code::joint_check, at(5000), "w"));
        all.add(diagnose(Code::unknown_name, at(6000), "e"));
        CHECK(all.list().size() == limits::diagnostics);
        CHECK(all.more() == 2);
        CHECK(all.errors() == 1);
        CHECK(all.sorted().front().code == Code::unknown_name);
        CHECK(summary(all) == "1 error, 99 warnings (2 not shown)");
    }

    TEST_CASE("errors come first by file and place, the rest as discovered") {
        Diagnostics all;
        all.add(diagnose(Code::joint_check, at(9), "w9"));
        all.add(diagnose(Code::unknown_name, at(1, 1), "other file"));
        all.add(diagnose(Code::unknown_name, {}, "no file"));
        all.add(diagnose(Code::unknown_name, at(7), "e7"));
        all.add(diagnose(Code::joint_check, at(2), "w2"));
        all.add(diagnose(Code::unknown_name, at(5), "e5"));
        std::string order;
        for (const Diagnostic& each : all.sorted()) order += each.message + ";";
        CHECK(order == "e5;e7;other file;no file;w9;w2;");
    }

    TEST_CASE("nearest name") {
        CHECK(nearest_name("hieght", {"width", "height"}) == "height");
        CHECK(nearest_name("Leg", {"log", "leg"}) == "leg");
        CHECK(nearest_name("apron", {"side_apron", "arpon", "aprons"}) == "aprons");
        CHECK(nearest_name("slat", {"shelf", "stretcher"}).empty());
        CHECK(nearest_name("ab", {"ac"}).empty());
        CHECK(nearest_name("leg", {}).empty());
        CHECK(nearest_name("", {"a"}).empty());
    }
}
