#include "compiler/revision.hpp"

#include <doctest/doctest.h>

using namespace rodwright;

static const std::string commit = "0123456789abcdef0123456789abcdef01234567";

static std::string revision_of(std::map<std::string, std::string> files) {
    const Revision found = committed_revision("/shop/tables", MemoryWorld(std::move(files)));
    CHECK(found.name.empty() != found.error.empty());
    return found.error.empty() ? found.name : found.error;
}

TEST_SUITE("unit/cli") {
    TEST_CASE("a branch's commit is found in its own file, or packed with others") {
        CHECK(revision_of({{"/shop/.git/HEAD", "ref: refs/heads/main\n"},
                           {"/shop/.git/refs/heads/main", commit + "\n"}}) == "0123456");
        CHECK(revision_of({{"/shop/tables/.git/HEAD", "ref: refs/heads/main\n"},
                           {"/shop/tables/.git/packed-refs",
                            "# pack-refs with: peeled\n" + std::string(40, 'f') + " refs/heads/mainland\n" +
                                commit + " refs/heads/main\n^" + std::string(40, 'e') + "\n"}}) == "0123456");
    }

    TEST_CASE("a commit that is looked at by itself, and a further working tree") {
        CHECK(revision_of({{"/shop/.git/HEAD", commit + "\n"}}) == "0123456");
        CHECK(revision_of({{"/shop/tables/.git", "gitdir: /home/store/.git/worktrees/tables\n"},
                           {"/home/store/.git/worktrees/tables/HEAD", "ref: refs/heads/oak\n"},
                           {"/home/store/.git/worktrees/tables/commondir", "../..\n"},
                           {"/home/store/.git/worktrees/tables/../../refs/heads/oak", commit + "\n"}}) ==
              "0123456");
    }

    TEST_CASE("without a commit the reason is said") {
        CHECK(revision_of({}) == "no repository of git holds the design");
        CHECK(revision_of({{"/shop/.git/HEAD", "ref: refs/heads/main\n"}}) ==
              "nothing has been committed yet on `refs/heads/main`");
        CHECK(revision_of({{"/shop/.git/HEAD", "<html>\n"}}) ==
              "the repository names no commit where it should");
    }
}
