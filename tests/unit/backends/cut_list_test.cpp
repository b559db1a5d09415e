#include "backends/cutlist/cut_list.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "backends/cutlist/cells.hpp"
#include "backends/cutlist/writers.hpp"
#include "tests/support/sample_piece.hpp"
#include "tests/support/wood.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE("unit/backends") {
    TEST_CASE("cut list groups by wood and thickness, thickest first") {
        const CutList list = make_cut_list(sample_piece());
        CHECK(list.parts == 4);
        CHECK(list.kinds == 4);
        REQUIRE(list.groups.size() == 3);
        CHECK(list.groups[0].wood == "ash");
        CHECK(list.groups[0].words == "white ash, quartered");
        CHECK(list.groups[0].thickness == inches(3, 2));
        CHECK(list.groups[0].rows.size() == 2);
        CHECK(list.groups[1].wood == "ash");
        CHECK(list.groups[1].thickness == 19);
        CHECK(list.groups[2].wood == "elm");
        // 19 mm is 0.748 in: not on the scale.
        CHECK(list.rounded);
        CHECK(group_title(list.groups[1], list.style) == "white ash, quartered, ~3/4\" thick");
    }

    TEST_CASE("cut list gives the length with tenons, and that from shoulder to shoulder") {
        const CutList list = make_cut_list(sample_piece());
        const CutRow& rail = list.groups.at(1).rows.at(0);
        // 20 in between shoulders and a tenon of 1 1/8 in at each end: 22 1/4 in.
        CHECK(rail.size[Axis::wide] == inches(89, 4));
        REQUIRE(rail.shoulder_length);
        CHECK(*rail.shoulder_length == inches(20));
        CHECK(rail.size[Axis::deep] == inches(9, 2));
        CHECK(rail.count == 1);
        CHECK_FALSE(list.groups.at(0).rows.at(0).shoulder_length);
    }

    TEST_CASE("cut list notes handed pairs, glued panels and hidden widths") {
        Piece piece = sample_piece();
        piece.kinds[3].extend[1] = {inches(1, 4), 0};
        const CutList list = make_cut_list(piece);
        CHECK(list.groups.at(0).rows.at(0).notes == std::vector<std::string>{"handed, its mirror is A2"});
        CHECK(list.groups.at(0).rows.at(1).notes == std::vector<std::string>{"mirror of A1"});
        const CutRow& top = list.groups.at(2).rows.at(0);
        CHECK(top.notes == std::vector<std::string>{"glued up from boards", "12\" visible width"});
        CHECK(top.size[Axis::deep] == inches(49, 4));
    }

    TEST_CASE("hardware is summed over the uses of a joint and over joints") {
        Piece piece = sample_piece();
        piece.joint_kinds[1].joints.push_back(JointId{2});
        piece.joint_kinds.push_back(piece.joint_kinds[1]);
        piece.joint_kinds[2].work.supplies = {{"wood_screw", ratio(5, 1), "number 8, 1-1/4 in long"},
                                              {"wood_screw", 1, "number 10"}};
        piece.joint_kinds[2].joints = {JointId{2}};
        const CutList list = make_cut_list(piece);
        REQUIRE(list.hardware.size() == 3);
        CHECK(list.hardware[0].name == "button");
        CHECK(list.hardware[0].count == 6);
        CHECK(list.hardware[1].note == "number 8, 1-1/4 in long");
        CHECK(list.hardware[1].count == 11);
        CHECK(list.hardware[2].count == 1);
    }

    TEST_CASE("cut list as text") {
        const std::string expected =
            "Watch bench\n"
            "===========\n"
            "\n"
            "4 parts of 4 kinds.\n"
            "Sizes are final. Length runs along the grain and includes what joints need beyond the "
            "shoulders;\n"
            "`shoulders` is the length that shows, where that is less.\n"
            "~ marks a size that is shown to the nearest 1/32\".\n"
            "\n"
            "white ash, quartered, 1 1/2\" thick\n"
            "\n"
            "  item  part        count   length   width   thick  shoulders  notes\n"
            "  A1    leg             1      28\"  1 1/2\"  1 1/2\"             handed, its mirror is A2\n"
            "  A2    leg             1      28\"  1 1/2\"  1 1/2\"             mirror of A1\n"
            "\n"
            "white ash, quartered, ~3/4\" thick\n"
            "\n"
            "  item  part        count   length   width   thick  shoulders  notes\n"
            "  B     front rail      1  22 1/4\"  4 1/2\"   ~3/4\"        20\"\n"
            "\n"
            "red elm, 3/4\" thick\n"
            "\n"
            "  item  part        count   length   width   thick  shoulders  notes\n"
            "  C     top             1      30\"     12\"    3/4\"             glued up from boards\n"
            "\n"
            "hardware\n"
            "\n"
            "  count  what        notes\n"
            "      3  button      hardwood\n"
            "      3  wood screw  number 8, 1-1/4 in long\n";
        CHECK(cut_list_text(make_cut_list(sample_piece())) == expected);
    }

    TEST_CASE("cut list as CSV by RFC 4180") {
        const std::string csv = cut_list_csv(make_cut_list(sample_piece()));
        const std::string header =
            "wood,wood_words,item,part,count,length,width,thickness,shoulder_length,length_mm,width_mm,"
            "thickness_mm,"
            "shoulder_length_mm,rough_length_mm,rough_width_mm,rough_thickness_mm,parts_in_rough,boards,"
            "notes\r\n";
        CHECK(csv.starts_with(header));
        // 22.25 x 25.4 = 565.15; 4.5 x 25.4 = 114.3; 20 x 25.4 = 508.
        CHECK(csv.find("\r\nash,\"white ash, quartered\",B,front_rail,1,\"22 1/4\"\"\",\"4 "
                       "1/2\"\"\",\"~3/4\"\"\",\"20\"\"\","
                       "565.150,114.300,19.000,508.000,,,,,,\r\n") != std::string::npos);
        CHECK(csv.ends_with("\r\n"));
        std::size_t bare = 0;
        for (std::size_t i = 0; i < csv.size(); ++i) {
            if (csv[i] == '\n' && (i == 0 || csv[i - 1] != '\r')) ++bare;
        }
        CHECK(bare == 0);
        CHECK(hardware_csv(make_cut_list(sample_piece())) ==
              "count,what,notes\r\n3,button,hardwood\r\n3,wood_screw,\"number 8, 1-1/4 in long\"\r\n");
    }

    TEST_CASE("cut list as Markdown keeps bars and stars in names as they are") {
        Piece piece = sample_piece();
        piece.kinds[3].name = "a|b*";
        const std::string text = cut_list_markdown(make_cut_list(piece));
        CHECK(text.find("| C | a\\|b\\* | 1 | 30\" | 12\" | 3/4\" |  | glued up from boards |\n") !=
              std::string::npos);
        CHECK(text.find("## White ash, quartered, 1 1/2\" thick\n") != std::string::npos);
        CHECK(text.find("| item | part | count | length | width | thick | shoulders | notes |\n"
                        "| --- | --- | ---: | ---: | ---: | ---: | ---: | --- |\n") != std::string::npos);
    }

    TEST_CASE("cut list as JSON is exact") {
        const auto json = nlohmann::json::parse(cut_list_json(make_cut_list(sample_piece())));
        CHECK(json["format"] == 1);
        const auto& rail = json["groups"][1]["rows"][0];
        CHECK(rail["item"] == "B");
        // 22 1/4 in = 89/4 x 127/5 mm = 11303/20 mm.
        CHECK(rail["length"]["exact"] == "11303/20");
        CHECK(rail["length"]["mm"] == 565.15);
        CHECK(rail["length"]["shown"] == "22 1/4\"");
        CHECK(rail["thickness"]["shown"] == "~3/4\"");
        CHECK(rail["shoulder_length"]["exact"] == "508");
        CHECK_FALSE(json["groups"][0]["rows"][0].contains("shoulder_length"));
        CHECK(json["hardware"][1]["what"] == "wood_screw");
    }

    TEST_CASE("cut list shows rough sizes, and the boards that parts come from") {
        const CompiledDesign design =
            compile_body("wood oak = white_oak\n" + stick("rail of oak", "wide", {0, 0, 0}, {500, 60, 19}));
        const PlannedWood planned =
            plan_from(design.piece(),
                      "boards: [{name: b1, wood: white_oak, thickness: 25mm, width: 150mm, length: 1200mm}]");
        const CutList list = make_cut_list(design.piece(), &planned.plan);
        const CutRow& row = list.groups.at(0).rows.at(0);
        REQUIRE(row.rough);
        // 12.7 mm at each end, 3.175 mm at each edge, 1.5875 mm for both faces.
        CHECK(row.rough->size[Axis::wide] == ratio(5254, 10));
        CHECK(row.rough->size[Axis::deep] == ratio(6635, 100));
        CHECK(row.rough->size[Axis::tall] == ratio(205875, 10000));
        CHECK(row.boards == std::vector<std::string>{"b1"});
        CHECK(cut_list_text(list).find("525.4 mm x 66.35 mm") ==
              std::string::npos);  // shown to half a millimetre
        CHECK(cut_list_text(list).find("~525.5 mm x ~66.5 mm x ~20.5 mm") != std::string::npos);
        CHECK(cut_list_csv(list).find("525.400,66.350,20.58") != std::string::npos);
        CHECK(nlohmann::json::parse(cut_list_json(list))["groups"][0]["rows"][0]["boards"][0] == "b1");
    }

    TEST_CASE("cut list of an empty piece has no groups") {
        const CutList list = make_cut_list(Piece{});
        CHECK(list.groups.empty());
        CHECK_FALSE(list.rounded);
        CHECK(cut_list_csv(list).find("\r\n") == cut_list_csv(list).size() - 2);
    }

    TEST_CASE("millimetres are the nearest double, not the one below") {
        // Decimals are read to the nearest double (IEEE 754).
        CHECK(nearest_double(ratio(3, 10)) == 0.3);
        CHECK(nearest_double(ratio(-3, 10)) == -0.3);
        CHECK(nearest_double(ratio(2032, 10)) == 203.2);
        CHECK(nearest_double(ratio(1, 3)) == 1.0 / 3);
        CHECK(nearest_double(ratio(2, 3)) == 2.0 / 3);
        CHECK(nearest_double(0) == 0);
        CHECK(nearest_double(19) == 19);
        for (int n = 1; n < 3000; ++n) CHECK(nearest_double(ratio(127 * n, 320)) == 127.0 * n / 320);
        // 2^53 + 1 and 2^53 + 3 lie between two doubles each.
        const Rational large(mpz_class("9007199254740992"));
        CHECK(nearest_double(large + 1) == 9007199254740992.0);
        CHECK(nearest_double(large + 3) == 9007199254740996.0);
    }
}
