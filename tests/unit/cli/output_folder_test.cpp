#include "compiler/plugin/output_folder.hpp"

#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <csignal>

#include "tests/support/scratch_folder.hpp"

using namespace rodwright;

namespace fs = std::filesystem;

TEST_SUITE("unit/cli") {
    TEST_CASE("files and subfolders arrive, old ones are replaced, others stay") {
        const ScratchFolder scratch;
        scratch.put("cut.txt", "old");
        scratch.put("mine.txt", "mine");
        OutputFolder out(scratch.path());
        out.write("cut.txt", "new");
        out.write("sheets/leg/top.svg", std::string("\0\n", 2));
        Diagnostics diagnostics;
        CHECK(out.commit(diagnostics));
        CHECK(diagnostics.ok());
        CHECK(scratch.get("cut.txt") == "new");
        CHECK(scratch.get("mine.txt") == "mine");
        CHECK(scratch.get("sheets/leg/top.svg") == std::string("\0\n", 2));
        CHECK(scratch.count() == 3);
    }

    TEST_CASE("the folder is made, and only on commit") {
        const ScratchFolder scratch;
        OutputFolder out(scratch.path() / "a" / "b");
        out.write("x", "1");
        CHECK_FALSE(fs::exists(scratch.path() / "a"));
        Diagnostics diagnostics;
        CHECK(out.commit(diagnostics));
        CHECK(scratch.get("a/b/x") == "1");
    }

    TEST_CASE("names that leave the folder are refused and nothing is written") {
        for (const char* name :
             {"../x", "a/../../x", "/tmp/x", "", ".", "a/", "./a", "a/..", "a\\b", "a\nb", "a//"}) {
            CAPTURE(name);
            const ScratchFolder scratch;
            OutputFolder out(scratch.path());
            out.write("good", "1");
            out.write(name, "2");
            Diagnostics diagnostics;
            CHECK_FALSE(out.commit(diagnostics));
            REQUIRE(diagnostics.list().size() == 1);
            CHECK(diagnostics.list()[0].code == Code::cannot_write);
            CHECK(scratch.count() == 0);
        }
    }

    TEST_CASE("a name given twice is refused") {
        OutputFolder out;
        out.write("a", "1");
        out.write("a", "2");
        Diagnostics diagnostics;
        CHECK_FALSE(out.commit(diagnostics));
        CHECK(diagnostics.list()[0].message == "two outputs are both named `a`");
    }

    TEST_CASE("in memory nothing reaches the disk") {
        OutputFolder out;
        out.write("a/b", "1");
        Diagnostics diagnostics;
        CHECK(out.commit(diagnostics));
        CHECK(out.files().at("a/b") == "1");
        CHECK_FALSE(fs::exists("a/b"));
    }

    TEST_CASE("a folder in a file's place: everything old stays, and the message says why") {
        const ScratchFolder scratch;
        scratch.put("a", "old a");
        fs::create_directory(scratch.path() / "b");
        OutputFolder out(scratch.path());
        out.write("a", "new a");
        out.write("b", "new b");
        Diagnostics diagnostics;
        CHECK_FALSE(out.commit(diagnostics));
        REQUIRE(diagnostics.list().size() == 1);
        CHECK(diagnostics.list()[0].message ==
              "cannot write `" + (scratch.path() / "b").string() + "`: Is a directory");
        CHECK(scratch.get("a") == "old a");
        CHECK(scratch.count() == 1);
    }

    TEST_CASE("a file in a folder's place is named") {
        const ScratchFolder scratch;
        scratch.put("a", "old");
        OutputFolder out(scratch.path() / "a");
        out.write("x", "1");
        Diagnostics diagnostics;
        CHECK_FALSE(out.commit(diagnostics));
        CHECK(diagnostics.list()[0].message.starts_with("cannot make the folder `" +
                                                        (scratch.path() / "a").string() + "`: "));
        CHECK(scratch.get("a") == "old");
    }

    TEST_CASE("a disk that fills up in the middle leaves the old files whole") {
        const ScratchFolder scratch;
        scratch.put("a", "old a");
        scratch.put("b", "old b");
        OutputFolder out(scratch.path());
        out.write("a", "new a");
        out.write("b", std::string(1 << 20, 'b'));
        rlimit before{};
        REQUIRE(getrlimit(RLIMIT_FSIZE, &before) == 0);
        const rlimit small{1 << 16, before.rlim_max};
        const auto handler = std::signal(SIGXFSZ, SIG_IGN);
        REQUIRE(setrlimit(RLIMIT_FSIZE, &small) == 0);
        Diagnostics diagnostics;
        const bool written = out.commit(diagnostics);
        REQUIRE(setrlimit(RLIMIT_FSIZE, &before) == 0);
        std::signal(SIGXFSZ, handler);
        CHECK_FALSE(written);
        CHECK(diagnostics.list().at(0).message ==
              "cannot write `" + (scratch.path() / "b").string() + "`: File too large");
        CHECK(scratch.get("a") == "old a");
        CHECK(scratch.get("b") == "old b");
        CHECK(scratch.count() == 2);
    }

    TEST_CASE("replacing one file keeps its permissions and follows a link") {
        const ScratchFolder scratch;
        scratch.put("real", "old");
        fs::permissions(scratch.path() / "real", fs::perms(0640));
        fs::create_symlink("real", scratch.path() / "link");
        Diagnostics diagnostics;
        CHECK(replace_file(scratch.path() / "link", "new", diagnostics));
        CHECK(scratch.get("real") == "new");
        CHECK(fs::is_symlink(scratch.path() / "link"));
        CHECK(fs::status(scratch.path() / "real").permissions() == fs::perms(0640));
        CHECK(scratch.count() == 2);
    }
}
