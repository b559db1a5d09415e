#include "compiler/diagnostics/render.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <random>

using namespace rodwright;

namespace {

Span find(const SourceManager& sources, FileId file, std::string_view words) {
    const auto at = static_cast<std::uint32_t>(sources.text(file).find(words));
    return {file, at, at + static_cast<std::uint32_t>(words.size())};
}

}  // namespace

TEST_SUITE("unit/diagnostics") {
    TEST_CASE("a diagnostic with everything, whole") {
        SourceManager sources;
        const FileId table =
            sources.add("table.rod", "piece \"T\" {\n  left = 3\"\n\n\n  left = leg.right\n}\n");
        const FileId joint = sources.add("joints/housing.rod", "joint housing {\n}\n", true);
        Diagnostic made =
            diagnose(Code::lines_disagree, find(sources, table, "left = leg.right"), "two lines disagree")
                .at("2 in by this line")
                .label(find(sources, table, "left = 3\""), "3 in by this one")
                .label(find(sources, joint, "housing"), "the joint")
                .note("they differ by 1 in")
                .hint("drop one of the two");
        made.trace.push_back({find(sources, table, "piece"), "in joint `housing`, used by the join"});
        CHECK(render(made, sources, false) ==
              "error[E0302]: two lines disagree\n"
              "  table.rod:5:3\n"
              "    2 |   left = 3\"\n"
              "      |   ~~~~~~~~~ 3 in by this one\n"
              "      :\n"
              "    5 |   left = leg.right\n"
              "      |   ^^^^^^^^^^^^^^^^ 2 in by this line\n"
              "  joints/housing.rod:1:7\n"
              "    1 | joint housing {\n"
              "      |       ~~~~~~~ the joint\n"
              "  note: they differ by 1 in\n"
              "  help: drop one of the two\n"
              "  in joint `housing`, used by the join at table.rod:1\n");
    }

    TEST_CASE("marks on one line share a row until one has words") {
        SourceManager sources;
        const FileId file = sources.add("a.rod", "x = 3\" + 14deg");
        const Diagnostic made = diagnose(Code::dimension_mismatch, find(sources, file, "+"), "m")
                                    .label(find(sources, file, "3\""), "a length")
                                    .label(find(sources, file, "14deg"), "an angle");
        CHECK(render(made, sources, false) ==
              "error[E0202]: m\n"
              "  a.rod:1:8\n"
              "    1 | x = 3\" + 14deg\n"
              "      |     ~~ a length\n"
              "      |        ^ ~~~~~ an angle\n");
    }

    TEST_CASE("a span over several lines is shown by its first and last") {
        SourceManager sources;
        const FileId file = sources.add("a.rod", "part a {\n  b\n  c\n  }\n");
        const Diagnostic made =
            diagnose(Code::no_place, find(sources, file, "a {\n  b\n  c\n  }"), "m").at("here");
        CHECK(render(made, sources, false) ==
              "error[E0301]: m\n"
              "  a.rod:1:6\n"
              "    1 | part a {\n"
              "      |      ^^^\n"
              "      :\n"
              "    4 |   }\n"
              "      |   ^ here\n");
    }

    TEST_CASE("carets stand under tabs, wide text and what is not text") {
        SourceManager sources;
        const FileId file = sources.add("a.rod", "\t\xc3\xa4\x1b\xff= y");
        CHECK(render(diagnose(Code::unknown_name, find(sources, file, "y"), "m"), sources, false) ==
              "error[E0201]: m\n"
              "  a.rod:1:7\n"
              "    1 |     \xc3\xa4\xef\xbf\xbd\xef\xbf\xbd= y\n"
              "      |          ^\n");
    }

    TEST_CASE("a long line is cut to what surrounds the mark") {
        SourceManager sources;
        const FileId file = sources.add("a.rod", std::string(500, 'a') + "X" + std::string(500, 'b'));
        const std::string text = render(diagnose(Code::expected, {file, 500, 501}, "m"), sources, false);
        // 20 columns lead in to the mark and 100 are shown in all, so 79 follow it.
        CHECK(text == "error[E0101]: m\n  a.rod:1:501\n    1 | ..." + std::string(20, 'a') + "X" +
                          std::string(79, 'b') + "...\n      | " + std::string(23, ' ') + "^\n");
    }

    TEST_CASE("text from outside cannot drive the terminal") {
        SourceManager sources;
        const FileId file = sources.add("\x1b[2J.rod", "\x1b[31mx\xe2\x80\xae");
        const Diagnostic made = diagnose(Code::expected, {file, 0, 1}, "\x1b]0;m\x07").note("a\nb\xc2\x9b");
        const std::string text = render(made, sources, false);
        CHECK(text.find('\x1b') == std::string::npos);
        CHECK(text.find('\x07') == std::string::npos);
        CHECK(text.find("\xe2\x80\xae") == std::string::npos);
        CHECK(text.find("\xc2\x9b") == std::string::npos);
    }

    TEST_CASE("colour only adds escape sequences") {
        SourceManager sources;
        const FileId file = sources.add("a.rod", "left");
        const Diagnostic made = diagnose(Code::unknown_name, {file, 0, 4}, "m").at("here").hint("h");
        std::string coloured = render(made, sources, true);
        CHECK(coloured.find("\x1b[1;31m") != std::string::npos);
        for (std::size_t at; (at = coloured.find('\x1b')) != std::string::npos;) {
            coloured.erase(at, coloured.find('m', at) - at + 1);
        }
        CHECK(coloured == render(made, sources, false));
    }

    TEST_CASE("any span can be rendered") {
        SourceManager sources;
        const FileId empty = sources.add("empty.rod", "");
        const FileId file = sources.add("a.rod", "\xc3\xa4\r\n\n \t\nlast\xff");
        const std::uint32_t many = 0xffffffff;
        const std::vector<std::uint32_t> offsets = {0, 1, 2, 3, 4, 5, 6, 7, 8, 11, 12, 13, 14, many};
        for (const FileId each : {empty, file, FileId{7}, FileId::none}) {
            for (const std::uint32_t begin : offsets) {
                for (const std::uint32_t end : offsets) {
                    const Diagnostic made = diagnose(Code::expected, {each, begin, end}, "m")
                                                .label({file, end, begin}, "other")
                                                .label({each, begin, end}, "same");
                    CHECK(render(made, sources, false).starts_with("error[E0101]: m\n"));
                    CHECK(nlohmann::json::accept(render_json(made, sources)));
                }
            }
        }
    }

    TEST_CASE("JSON has its keys in order and survives text that is not UTF-8") {
        SourceManager sources;
        const FileId file = sources.add("a.rod", "\xc3\xa4 = 1\nb");
        Diagnostic made = diagnose(Code::unknown_name, {file, 2, 8}, "m\xff").at("t").note("n").hint("h");
        made.trace.push_back({{}, "in joint `x`"});
        CHECK(render_json(made, sources) ==
              R"({"file":"a.rod","line":1,"column":2,"end":{"line":2,"column":2},"code":"E0201",)"
              R"("severity":"error","message":"m)"
              "\xef\xbf\xbd"
              R"(","text":"t","labels":[],"notes":["n"],"help":"h",)"
              R"("trace":[{"file":null,"line":null,"column":null,"end":null,"text":"in joint `x`"}]})"
              "\n");
    }
}
