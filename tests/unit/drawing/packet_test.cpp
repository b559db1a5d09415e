#include <doctest/doctest.h>

#include <algorithm>

#include "backends/packet/packet.hpp"
#include "tests/support/sample_piece.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/sheet_check.hpp"

using namespace rodwright;
using namespace rodwright::drawing;
using testing::made_example;
using testing::Making;

static std::string titles_of(const std::vector<Sheet>& sheets) {
    std::string titles;
    for (const Sheet& sheet : sheets) titles += sheet.title + "\n";
    return titles;
}

static std::vector<std::string> texts_of(const Sheet& sheet) {
    std::vector<std::string> texts;
    for (const Item& item : sheet.items) {
        if (const auto* text = std::get_if<Text>(&item)) texts.push_back(text->text);
    }
    return texts;
}

static bool says(const Sheet& sheet, const std::string& text) {
    const std::vector<std::string> texts = texts_of(sheet);
    return std::find(texts.begin(), texts.end(), text) != texts.end();
}

static Piece with_long_names(Piece piece) {
    piece.name =
        "Table for the long watch in the northern keeper's room of the weather station, second of three";
    for (Kind& kind : piece.kinds)
        kind.name += "_with_a_name_that_nobody_would_want_to_write_on_a_part_twice";
    return piece;
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("every sheet keeps to its frame, no text on text or on an edge") {
        for (const bool long_names : {false, true}) {
            Making making(long_names ? with_long_names(sample_piece()) : sample_piece());
            for (const SheetFormat& format : sheet_formats()) {
                for (const char* projection : {"first", "third"}) {
                    CAPTURE(format.word);
                    CAPTURE(long_names);
                    for (const Sheet& sheet :
                         making.sheets({{"sheet", format.word}, {"projection", projection}})) {
                        for (const std::string& fault : testing::faults_of(sheet, *making.fonts))
                            FAIL_CHECK(fault);
                        CHECK(sheet.items.size() > 10);
                    }
                }
            }
        }
    }

    TEST_CASE("a sheet for every kind but mirror images, in the order of the letters") {
        Making making(sample_piece());
        const std::string titles = titles_of(making.sheets({{"sheet", "a3"}, {"projection", "first"}}));
        CHECK(
            titles.starts_with("Cover\nGeneral arrangement\nGeneral arrangement, sections\nTaken apart\nPart "
                               "A1 and A2, leg\nPart B, front rail\nPart C, top\n"
                               "Joint, mortise and tenon\nJoint, buttons\n"));
        CHECK(titles.find("Cut list\nSet-ups\n") != std::string::npos);
    }

    TEST_CASE("the sizes of a part are on its sheet, as the piece shows lengths") {
        Making making(sample_piece());
        const std::vector<Sheet> sheets = making.sheets({{"sheet", "letter"}, {"projection", "third"}});
        std::string rail;
        for (const Item& item : sheets[5].items) {
            if (const auto* text = std::get_if<Text>(&item)) rail += "{" + text->text + "}";
        }
        // 20 between shoulders, 1 1/8 of tenon at each end: 22 1/4 overall; 19 mm is nearest to 3/4 in.
        for (const char* wanted : {"{20\"}", "{1 1/8\"}", "{22 1/4\"}", "{4 1/2\"}", "{~3/4\"}"}) {
            CAPTURE(wanted);
            CHECK(rail.find(wanted) != std::string::npos);
        }
    }

    TEST_CASE("every part of the examples has its sizes on one sheet") {
        for (const std::string& name : testing::example_names()) {
            CAPTURE(name);
            for (const Sheet& sheet : made_example(name).sheets({}))
                CHECK(sheet.title.find(", sizes") == std::string::npos);
        }
    }

    TEST_CASE("the general arrangement takes the largest scale there is room for") {
        // 420 + 280 mm side by side: 140 of 180 mm within A4's frame at 1:5, no room at 1:2.
        Making& making = made_example("instrument_tray");
        CHECK(says(making.sheets({{"sheet", "a4"}, {"projection", "first"}})[1], "1:5"));
    }

    TEST_CASE("the general arrangement has the heights a maker sets the parts by") {
        // The table: top 13/16 under 29 1/2, aprons 4 1/2 under that, stretchers 6 to 7 3/4 over the floor.
        Making& making = made_example("keepers_table");
        const std::vector<Sheet> sheets = making.sheets({{"sheet", "letter"}, {"projection", "third"}});
        for (const char* height : {"6\"", "7 3/4\"", "24 3/16\"", "28 11/16\"", "29 1/2\""}) {
            CAPTURE(height);
            CHECK(says(sheets[1], height));
        }
    }

    TEST_CASE("the sections say where they are, and name what they show") {
        // The table is 21 deep and 42 wide; nine slats, the fifth of them in the middle.
        Making& making = made_example("keepers_table");
        const Sheet sheet = making.sheets({{"sheet", "letter"}, {"projection", "third"}})[2];
        CHECK(sheet.title == "General arrangement, sections");
        for (const char* text :
             {"Cut along, 10 1/2\" from the front", "Cut across, 21\" from the left", "E", "F"}) {
            CAPTURE(text);
            CHECK(says(sheet, text));
        }
        const auto hatched = [](const Item& item) {
            const auto* stroke = std::get_if<Stroke>(&item);
            return stroke != nullptr && stroke->role == LineRole::hatch;
        };
        CHECK(std::count_if(sheet.items.begin(), sheet.items.end(), hatched) > 100);
    }

    TEST_CASE("sections go through the parts, also where the piece has room behind them") {
        // Post and rail stand in the front 40 of 400 mm: cut along through 20 of it, both are hit.
        Making making(testing::compile_text(R"(piece "Half" {
    unit mm
    wide = 400mm; deep = 400mm; tall = 300mm
    wood ash = white_ash quartered
    part post of ash {
        grain tall
        left = piece.left; wide = 40mm; front = piece.front; deep = 40mm; bottom = piece.bottom; tall = 300mm
    }
    part rail of ash {
        grain wide
        left = post.right; wide = 100mm; front = piece.front + 10mm; deep = 20mm
        bottom = piece.bottom + 100mm; tall = 60mm
    }
    join rail.left to post.right with mortise_and_tenon
})")
                          .piece());
        const Sheet sheet = making.sheets({{"sheet", "a4"}, {"projection", "first"}})[2];
        CHECK(says(sheet, "Cut along, 20 from the front"));
        CHECK(says(sheet, "Cut across, 70 from the left"));
        CHECK(testing::faults_of(sheet, *making.fonts).empty());
    }

    TEST_CASE("rounded and chamfered edges have their size at a leader") {
        // The table's leg: round(1/8") on all four long edges; its stretcher: 1/16" on the two bottom ones.
        Making& table = made_example("keepers_table");
        const std::vector<Sheet> sheets = table.sheets({{"sheet", "letter"}, {"projection", "third"}});
        CHECK(says(sheets[4], "4 × R 1/8\""));
        CHECK(says(sheets[7], "2 × R 1/16\""));
    }

    TEST_CASE("a joint's sections say where what is cut begins and ends") {
        // The table's aprons: 3/16 behind the leg's face, 3/4 thick, tenon 1/4 in the middle of that.
        Making& making = made_example("keepers_table");
        const std::vector<Sheet> sheets = making.sheets({{"sheet", "letter"}, {"projection", "third"}});
        REQUIRE(sheets[10].title == "Joint, mortise and tenon");
        for (const char* size : {"3/16\"", "7/16\"", "11/16\"", "15/16\""}) {
            CAPTURE(size);
            CHECK(says(sheets[10], size));
        }
    }

    TEST_CASE("a joint's sections are drawn at half size or larger, what is too long for that cropped") {
        Making& making = made_example("keepers_table");
        std::size_t sections = 0;
        for (const Sheet& sheet : making.sheets({{"sheet", "letter"}})) {
            for (const std::string& text : texts_of(sheet)) {
                if (!text.starts_with("Section across, ") && !text.starts_with("Section along, ")) continue;
                ++sections;
                CAPTURE(text);
                CHECK((text.ends_with(" 2:1") || text.ends_with(" 1:1") || text.ends_with(" 1:2")));
            }
        }
        CHECK(sections == 10);  // two on each of five sheets
    }

    TEST_CASE("with both units the cut list has both, and the title block says so") {
        // The side aprons of the table are 16 1/4 in long: 412.75 mm.
        Making& making = made_example("keepers_table");
        bool said = false;
        for (const Sheet& sheet : making.sheets({{"sheet", "letter"}, {"units", "both"}})) {
            CHECK(says(sheet, "inches to 1/32 [millimetres to 1/10]"));
            said = said || (sheet.title == "Cut list" && says(sheet, "[~412.8 mm]"));
        }
        CHECK(said);
    }

    TEST_CASE("the summary names what there is") {
        const std::string summary = make_packet_backend()->summary();
        for (const char* word : {"PDF", "cover", "views", "sections", "part", "joint", "templates",
                                 "cut list", "order of work"}) {
            CAPTURE(word);
            CHECK(summary.find(word) != std::string::npos);
        }
    }

    TEST_CASE("what joints and shapes write is in the unit that the run is asked for") {
        const packet::Context inch = made_example("keepers_table").context({{"units", "inch"}});
        const packet::Context metric = made_example("keepers_table").context({{"units", "mm"}});
        const auto with_inches = [](const packet::Context& context) {
            return std::ranges::count_if(context.input.work->operations, [&](const Operation& step) {
                std::string all = read_out(step.caution, context.piece.style);
                for (const Phrase& line : step.text) all += read_out(line, context.piece.style);
                for (const StepSetting& setting : step.settings)
                    all += read_out(setting.value, context.piece.style) +
                           read_out(setting.worked_out, context.piece.style);
                return all.find('"') != std::string::npos;
            });
        };
        CHECK(with_inches(inch) > 10);
        CHECK(with_inches(metric) == 0);
    }

    TEST_CASE("the backend writes the same file each time") {
        const auto packet_of = [](const OptionValues& options) {
            Making making(sample_piece());
            OutputFolder out;
            make_packet_backend()->emit(making.input, options, out, making.diagnostics);
            REQUIRE(out.files().contains("packet.pdf"));
            return out.files().at("packet.pdf");
        };
        const std::string first = packet_of({{"sheet", "auto"}, {"projection", "auto"}});
        CHECK(first == packet_of({{"sheet", "letter"}, {"projection", "third"}}));
        CHECK(first != packet_of({{"sheet", "a4"}, {"projection", "third"}}));
        CHECK(first.size() < 600'000);
    }
}
