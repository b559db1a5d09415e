// What README.md, DEVELOPERS.md and the page on joints show must be so.
#include <doctest/doctest.h>

#include <cstdio>
#include <filesystem>
#include <memory>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "compiler/compile.hpp"
#include "compiler/world.hpp"
#include "grammar/parse.hpp"
#include "tests/unit/structure/source_tree.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const std::vector<std::string> documents = {"README.md", "DEVELOPERS.md", "stdlib/WRITING_JOINTS.md"};

std::vector<std::string> errors_of_parsing(const std::string& text) {
    SourceManager sources;
    Diagnostics diagnostics;
    parse(sources, sources.add("example.rod", text), diagnostics);
    std::vector<std::string> errors;
    for (const Diagnostic& each : diagnostics.list()) errors.push_back(each.message);
    return errors;
}

// Everything that compiling says, warnings too.
std::vector<std::string> messages_of_compiling(const std::string& text) {
    const MemoryWorld world({{"example.rod", text}});
    CompileOptions options;
    options.path = "example.rod";
    const Compilation made = compile(world, options);
    std::vector<std::string> messages;
    for (const Diagnostic& each : made.diagnostics.list()) messages.push_back(each.message);
    return messages;
}

std::set<std::string> matches(const std::string& text, const char* pattern) {
    const std::regex form(pattern);
    std::set<std::string> found;
    for (std::sregex_iterator at(text.begin(), text.end(), form), end; at != end; ++at)
        found.insert((*at)[1]);
    return found;
}

// A piece in which a rail's end meets a post with that joint.
std::string piece_with_joint(const std::string& name) {
    return "piece \"Sample\" {\nunit in\nwide = 10\"; deep = 2\"; tall = 12\"\n"
           "part post { grain tall; left = piece.left; wide = 2\"; front = piece.front; deep = 2\"\n"
           "bottom = piece.bottom; top = piece.top }\n"
           "part rail { grain wide; left = post.right; right = piece.right\n"
           "front = piece.front + 1/2\"; deep = 1\"; bottom = piece.bottom + 6\"; tall = 1\" }\n"
           "join rail.left to post with " +
           name + "\n}\n";
}

// What the program prints for `rodwright COMMAND --help`.
std::string help_of(const std::string& command) {
    const std::string line = RODWRIGHT_BINARY_DIR "/bin/rodwright " + command + " --help";
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(line.c_str(), "r"), pclose);
    REQUIRE(pipe != nullptr);
    std::string text;
    for (int byte = 0; (byte = std::fgetc(pipe.get())) != EOF;) text += static_cast<char>(byte);
    return text;
}

// Links and pictures of a page that point into the project.
std::set<std::string> links_of(const std::string& markdown) {
    return matches(markdown, R"(\]\(([^)#:]+)[)#])");
}

}  // namespace

TEST_SUITE("unit/structure") {
    TEST_CASE("every example in .rod can be read") {
        std::size_t examples = 0;
        for (const std::string& document : documents) {
            for (const Fence& fence : fences_of(source_file(document).text)) {
                if (fence.language != "rod") continue;
                ++examples;
                for (const std::string& error : errors_of_parsing(fence.text))
                    FAIL_CHECK(document, ":", fence.line, ": ", error);
            }
        }
        CHECK(examples >= 10);
    }

    TEST_CASE("every whole piece compiles without a word") {
        std::size_t pieces = 0;
        for (const std::string& document : documents) {
            for (const Fence& fence : fences_of(source_file(document).text)) {
                if (fence.language != "rod" || fence.text.find("piece \"") == std::string::npos) continue;
                ++pieces;
                for (const std::string& message : messages_of_compiling(fence.text))
                    FAIL_CHECK(document, ":", fence.line, ": ", message);
            }
        }
        CHECK(pieces > 3);
    }

    TEST_CASE("every joint that a document defines works") {
        std::size_t joints = 0;
        for (const std::string& document : documents) {
            for (const Fence& fence : fences_of(source_file(document).text)) {
                if (fence.language != "rod" || !fence.text.starts_with("joint ")) continue;
                ++joints;
                const std::string name = fence.text.substr(6, fence.text.find('(') - 6);
                for (const std::string& message : messages_of_compiling(fence.text + piece_with_joint(name)))
                    FAIL_CHECK(document, ":", fence.line, ": ", message);
            }
        }
        CHECK(joints > 0);
    }

    TEST_CASE("the excerpt of the table stands in the table's design") {
        const std::string design = source_file("examples/keepers_table/keepers_table.rod").text;
        std::size_t excerpts = 0;
        for (const Fence& fence : fences_of(source_file("README.md").text)) {
            if (fence.language != "rod" || !fence.text.starts_with("    part leg ")) continue;
            ++excerpts;
            for (const std::string& line : lines_of(fence.text)) {
                CAPTURE(line);
                CHECK(
                    (line.find("...") != std::string::npos || design.find(line + "\n") != std::string::npos));
            }
        }
        CHECK(excerpts == 1);
    }

    TEST_CASE("README.md names the two commands") {
        const std::string readme = source_file("README.md").text;
        for (const std::string command : {"examples/run", "tests/run"}) {
            CAPTURE(command);
            CHECK(readme.find("\n" + command + "\n") != std::string::npos);
            CHECK(std::filesystem::exists(RODWRIGHT_SOURCE_DIR "/" + command));
        }
    }

    TEST_CASE("every option that README.md names is in the program's help") {
        std::string help;
        for (const char* command : {"", "build", "check", "format", "list", "rack after", "explain"})
            help += help_of(command);
        const auto options = matches(source_file("README.md").text, R"([ `(](--[a-z][a-z-]+))");
        CHECK(options.size() > 5);
        for (const std::string& option : options) {
            CAPTURE(option);
            CHECK(std::regex_search(help, std::regex("[ ,]" + option + "[ ,\n]")));
        }
    }

    TEST_CASE("links between the documents lead somewhere") {
        for (const std::string& document : documents) {
            const auto folder = (std::filesystem::path(RODWRIGHT_SOURCE_DIR) / document).parent_path();
            for (const std::string& link : links_of(source_file(document).text)) {
                CAPTURE(document);
                CAPTURE(link);
                CHECK(std::filesystem::exists(folder / link));
            }
        }
    }

    TEST_CASE("every joint and shape of the library is in README.md") {
        const std::string readme = source_file("README.md").text;
        for (const std::string folder : {"stdlib/joints", "stdlib/shapes"}) {
            for (const std::string& file : entries_of(folder)) {
                CAPTURE(file);
                CHECK(readme.find("`" + file.substr(0, file.rfind('.')) + "`") != std::string::npos);
            }
        }
    }
}
