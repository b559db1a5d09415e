#include <doctest/doctest.h>
#include <yaml-cpp/yaml.h>

#include "backends/graph/graph_backend.hpp"
#include "compiler/data/yaml_fields.hpp"
#include "tests/support/sample_piece.hpp"

using namespace rodwright;

TEST_SUITE("unit/backends") {
    TEST_CASE("the piece as YAML reads back with the same parts, joints and exact numbers") {
        const Piece piece = sample_piece();
        const YAML::Node root = YAML::Load(piece_yaml(piece));
        CHECK(root["format"].as<int>() == 1);
        CHECK(root["piece"].as<std::string>() == "Watch bench");
        REQUIRE(root["kinds"].size() == piece.kinds.size());
        REQUIRE(root["parts"].size() == piece.parts.size());
        REQUIRE(root["joints"].size() == piece.joints.size());
        CHECK(root["joint_kinds"].size() == piece.joint_kinds.size());
        for (std::size_t i = 0; i < piece.parts.size(); ++i) {
            const YAML::Node part = root["parts"][i];
            CHECK(part["name"].as<std::string>() == piece.parts[i].name);
            CHECK(part["kind"].as<std::size_t>() == static_cast<std::size_t>(piece.parts[i].kind));
            // Each part is in the list of its kind.
            const YAML::Node of_kind = root["kinds"][part["kind"].as<std::size_t>()]["parts"];
            CHECK(of_kind[0].as<std::size_t>() == i);
        }
        const YAML::Node rail = root["kinds"][2];
        CHECK(rail["overall"][0].as<std::string>() == "11303/20");
        CHECK(rail["extend"][0][1].as<std::string>() == "1143/40");
        CHECK(root["kinds"][1]["mirror_of"].as<int>() == 0);
        CHECK_FALSE(root["kinds"][0]["mirror_of"]);
        CHECK(root["joints"][0]["members"][1]["part"].as<int>() == 0);
        CHECK(root["joints"][0]["frame"]["w"].as<std::string>() == "-wide");
        CHECK(root["joints"][1]["slides"].as<std::string>() == "+wide");
        CHECK(root["kinds"][0]["features"][0]["body"]["profile"].size() == 3);
        CHECK(root["params"]["length"]["unit"].as<std::string>() == "mm");
    }

    TEST_CASE("the piece as YAML stays within our own narrow YAML, whatever names it has") {
        Piece piece = sample_piece();
        piece.name = "no: \"quotes\" # or *stars*\n\xC3\xA4";
        piece.kinds[0].shapes[0].label = "yes";
        SourceManager sources;
        Diagnostics diagnostics;
        const auto root = read_yaml(sources, sources.add("piece.yaml", piece_yaml(piece)), diagnostics);
        REQUIRE(root);
        CHECK(find_entry(*root, "piece")->text == piece.name);
        CHECK(root->children.front().key == "format");
    }

    TEST_CASE("the piece as YAML is the same every time") {
        CHECK(piece_yaml(sample_piece()) == piece_yaml(sample_piece()));
    }
}
