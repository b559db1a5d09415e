#include "compiler/plugin/staged_file.hpp"

#include <doctest/doctest.h>

#include "tests/support/scratch_folder.hpp"

using namespace rodwright;

TEST_SUITE("unit/cli") {
    TEST_CASE("what is published can be taken back until it is settled") {
        const ScratchFolder scratch;
        scratch.put("old", "old");
        {
            StagedFile replaced(scratch.path() / "old", 0);
            StagedFile added(scratch.path() / "new", 1);
            REQUIRE_FALSE(replaced.write("changed"));
            REQUIRE_FALSE(added.write("added"));
            CHECK(scratch.get("old") == "old");
            REQUIRE_FALSE(replaced.publish());
            REQUIRE_FALSE(added.publish());
            CHECK(scratch.get("old") == "changed");
            CHECK(scratch.get("new") == "added");
            replaced.take_back();
            added.take_back();
        }
        CHECK(scratch.get("old") == "old");
        CHECK(scratch.count() == 1);
    }

    TEST_CASE("a file that is never published leaves nothing behind") {
        const ScratchFolder scratch;
        {
            StagedFile staged(scratch.path() / "a", 0);
            REQUIRE_FALSE(staged.write("a"));
            CHECK(scratch.count() == 1);
        }
        CHECK(scratch.count() == 0);
    }
}
