#include <set>
#include <sstream>
#include <vector>

#include "compiler/data/woods.hpp"
#include "compiler/quantity/quantity.hpp"
#include "tests/unit/rough/library_milling.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// What is wrong with it when it lies over the library's: `3:10 message`, a line for each.
std::string trouble_of(const std::string& text) {
    SourceManager sources;
    Diagnostics diagnostics;
    const FileId file = sources.add("milling.yaml", text);
    const auto data = overlay_milling(library_milling(), sources, file, library_woods(), diagnostics);
    CHECK(data.has_value() == diagnostics.ok());
    std::string found;
    for (const Diagnostic& each : diagnostics.list()) {
        CHECK((each.code == Code::bad_data || each.code == Code::unknown_wood));
        const Position at = sources.position(each.primary.file, each.primary.begin);
        found += std::to_string(at.line) + ":" + std::to_string(at.column) + " " + each.message + "\n";
    }
    return found;
}

// The first word after `#` in a line that holds a value, or empty.
std::string mark_of(const std::string& line) {
    const std::size_t at = line.find('#');
    if (at == std::string::npos) return {};
    const std::size_t begin = std::min(line.find_first_not_of("# ", at), line.size());
    return line.substr(begin, line.find_first_of(" ,:(", begin) - begin);
}

std::vector<std::string> lines_in(const std::string& text) {
    std::istringstream stream(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

}  // namespace

TEST_SUITE("unit/rough") {
    TEST_CASE("every value of the library says where it comes from") {
        std::set<std::string> marks;
        bool listed = false;
        std::size_t values = 0;
        for (const std::string& line : lines_in(library_milling_text())) {
            if (line.starts_with("#")) {
                if (listed) marks.insert(mark_of(line));
                listed = listed || line.starts_with("# The word behind each value");
                continue;
            }
            if (line.find(':') == std::string::npos || line.ends_with(":")) continue;
            CAPTURE(line);
            ++values;
            CHECK(marks.contains(mark_of(line)));
        }
        CHECK(marks.size() == 9);
        CHECK(values > 70);
    }

    TEST_CASE("the library's values, some of each kind") {
        const MillingData data = library_milling();
        REQUIRE(data.classes.size() == 9);
        CHECK(data.classes.front().name == "4/4");
        CHECK(data.classes.back().name == "16/4");
        CHECK(data.find_class("6/4")->dressed == inches(5, 4));
        CHECK_FALSE(data.find_class("7/4")->dressed);
        CHECK(data.find_class("9/4") == nullptr);
        CHECK(data.kerf(data.saws.rip) == inches(1, 8));
        CHECK(data.kerf("hand_crosscut_saw") == inches(1, 20));
        CHECK_FALSE(data.planer.snipes);
        CHECK(data.shortest_milled() == inches(14));
        CHECK(data.buying.grades.at("fas") == ratio(3, 10));
        CHECK(data.buying.grades.contains(data.buying.grade));
    }

    TEST_CASE("what is added when buying: the grade's share, and that of the wood") {
        Buying buying = library_milling().buying;
        CHECK(buying.share("white_ash") == ratio(30, 100));
        CHECK(buying.share("walnut") == ratio(40, 100));
        buying.grade = "no_1_common";
        CHECK(buying.share("white_ash") == ratio(50, 100));
    }

    TEST_CASE("a maker's file changes what it names and nothing else") {
        const MillingData library = library_milling();
        const MillingData own = own_milling(
            "allowances:\n  end: 20mm\n"
            "kerfs:\n  table_saw: 2.8mm\n  frame_saw: 1.5mm\n"
            "saws:\n  resaw: frame_saw\n"
            "planer:\n  snipes: true\n"
            "thickness_classes:\n  7/4:\n    usual: true\n  27mm:\n    rough: 27mm\n    surfaced: 22mm\n"
            "buying:\n  grade: prime\n  grades:\n    prime: 25 %\n");
        CHECK(own.allowances.end == 20);
        CHECK(own.allowances.edge == library.allowances.edge);
        CHECK(own.kerf("table_saw") == ratio(28, 10));
        CHECK(own.kerf("mitre_saw") == library.kerf("mitre_saw"));
        CHECK(own.kerf(own.saws.resaw) == ratio(3, 2));
        CHECK(own.saws.rip == library.saws.rip);
        CHECK(own.planer.snipes);
        CHECK(own.planer.snipe == library.planer.snipe);
        CHECK(own.find_class("7/4")->usual);
        CHECK(own.find_class("7/4")->rough == inches(7, 4));
        // 25.4 < 27 < 31.75: the new class lies between 4/4 and 5/4.
        REQUIRE(own.classes.size() == library.classes.size() + 1);
        CHECK(own.classes[1].name == "27mm");
        CHECK(own.class_for(21)->name == "27mm");
        CHECK(own.buying.grades.at(own.buying.grade) == ratio(1, 4));
        CHECK(own.buying.grades.at("fas") == library.buying.grades.at("fas"));
    }

    TEST_CASE("the thinnest usual class that is thick enough") {
        const MillingData data = library_milling();
        CHECK(data.class_for(inches(13, 16))->name == "4/4");
        CHECK(data.class_for(inches(53, 64))->name == "5/4");
        // 7/4 would do for 1 1/2 in, but few dealers have it.
        CHECK(data.class_for(inches(3, 2))->name == "8/4");
        CHECK(data.class_for(inches(15, 4))->name == "16/4");
        CHECK(data.class_for(inches(61, 16)) == nullptr);
    }

    TEST_CASE("what is wrong in a maker's file is reported where it stands") {
        CHECK(trouble_of("allowance:\n  end: 1 in\n") == "1:1 there is no field `allowance` here\n");
        CHECK(trouble_of("allowances:\n  ends: 1 in\n") == "2:3 there is no field `ends` here\n");
        CHECK(trouble_of("allowances:\n  end: 1\n") == "2:8 a length is wanted here\n");
        CHECK(trouble_of("allowances:\n  end: -1mm\n") == "2:8 `-1mm` is not a number\n");
        CHECK(trouble_of("allowances:\n  end: 1 lb\n") == "2:8 a length is wanted here\n");
        CHECK(trouble_of("allowances:\n  end: long\n") == "2:8 `long` is not a number\n");
        CHECK(trouble_of("allowances: 1 in\n") == "1:13 a map is wanted here, this is a word or a number\n");
        CHECK(trouble_of("- 1 in\n") == "1:1 a map is wanted here, this is a list\n");
        CHECK(trouble_of("jointer:\n  widest: 0mm\n") == "2:11 a length above zero is wanted here\n");
        CHECK(trouble_of("planer:\n  snipes: yes\n") == "2:11 `true` or `false` is wanted here\n");
        CHECK(trouble_of("saws:\n  rip: table_sau\n") == "2:8 `table_sau` is not one of `kerfs`\n");
        CHECK(trouble_of("buying:\n  grade: best\n") == "2:10 `best` is not one of `grades`\n");
        CHECK(trouble_of("buying:\n  grades:\n    fas: 3\n") == "3:10 a percentage is wanted here\n");
        CHECK(trouble_of("buying:\n  species:\n    walnot: 5 %\n") == "3:5 there is no wood `walnot`\n");
        CHECK(trouble_of("panels:\n  narrowest_stave: 10 in\n") ==
              "2:20 the widest stave is not narrower than the narrowest\n");
        CHECK(trouble_of("panels:\n  widest_stave: 1 in\n") ==
              "2:17 the widest stave is not narrower than the narrowest\n");
        CHECK(trouble_of("thickness_classes:\n  4/4: {surfaced: 2 in}\n") ==
              "2:19 a surfaced board is not thicker than the rough one\n");
        CHECK(trouble_of("thickness_classes:\n  9/4: {rough: 2 in}\n") ==
              "2:8 the field `surfaced` is missing here\n");
        CHECK(trouble_of("thickness_classes:\n  \"\": {rough: 2 in, surfaced: 1 in}\n") ==
              "2:3 a thickness class has a name\n");
        CHECK(trouble_of("kerfs:\n  table_saw: [1mm]\n").ends_with("this is a list\n"));
    }

    TEST_CASE("the library's file has to be whole") {
        for (const std::string key : {"  end:", "  rip:", "  snipes:", "  widest_stave:", "  sheet_trim:",
                                      "  grade:", "    surfaced:", "    dressed:"}) {
            CAPTURE(key);
            std::string text = library_milling_text();
            const std::size_t at = text.find("\n" + key);
            REQUIRE(at != std::string::npos);
            text.erase(at, text.find('\n', at + 1) - at);
            SourceManager sources;
            Diagnostics diagnostics;
            const FileId file = sources.add("milling.yaml", text);
            const auto data = read_milling(sources, file, library_woods(), diagnostics);
            // What softwood is dressed to is known of some classes only.
            CHECK(data.has_value() == (key == "    dressed:"));
        }
    }
}
