// What E1002 says would free the parts frees them.
#include <doctest/doctest.h>

#include "backends/svg/locked_picture.hpp"
#include "compiler/check/run_checks.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// The lower rail slides into the right post from behind, and into the left one as that stands.
std::string stand(const std::string& left_post) {
    return R"(piece "Stand" {
    wide = 24"; deep = 5"; tall = 20"
    part left_post {
        grain tall
        wide = 2"; tall = 20"
        left = piece.left; bottom = piece.bottom
)" + left_post +
           R"(
    }
    part right_post {
        grain tall
        wide = 2"; deep = 3"; tall = 20"
        right = piece.right; front = piece.front; bottom = piece.bottom
    }
    part upper {
        grain wide
        left = left_post.right; right = right_post.left; deep = 3/4"; tall = 3"
        front = piece.front + 1-3/4"; bottom = piece.bottom + 14"
    }
    part lower {
        grain wide
        left = left_post.right; right = right_post.left; deep = 3/4"; tall = 3"
        front = piece.front + 1-3/4"; bottom = piece.bottom + 4"
    }
    join upper.left to left_post with mortise_and_tenon
    join upper.right to right_post with mortise_and_tenon
    join lower.left to left_post with sliding_dovetail(slide = thickness)
    join lower.right to right_post with sliding_dovetail(slide = thickness)
})";
}

const std::string open_in_front = R"(front = piece.front + 1-1/4"; deep = 3")";
const std::string open_behind = R"(front = piece.front + 1-1/4"; back = lower.back)";

struct Checked {
    CompiledDesign design;
    Diagnostics diagnostics;
    SolidStore solids{design.piece(), diagnostics};
    Diagnostics found = run_checks(design.piece(), solids).diagnostics;

    explicit Checked(const std::string& left_post) : design(compile_text(stand(left_post))) {}

    const Diagnostic* lock() const {
        for (const Diagnostic& each : found.list()) {
            if (each.code == Code::locked) return &each;
        }
        return nullptr;
    }
};

}  // namespace

TEST_SUITE("unit/check") {
    TEST_CASE("of two sockets that lock, one is named with the end to open; open there, nothing is locked") {
        const Checked locked(open_in_front);
        const Diagnostic* lock = locked.lock();
        REQUIRE(lock != nullptr);
        CHECK(
            lock->help ==
            "open the sliding dovetail of `lower` in `left_post` at its back end, so that `lower` can slide "
            "out of it backwards");
        REQUIRE(lock->labels.size() == 1);
        const SourceManager& sources = *locked.design.compilation().sources;
        CHECK(sources.text(lock->labels.front().span) ==
              "join lower.left to left_post with sliding_dovetail(slide = thickness)");
        CHECK(Checked(open_behind).lock() == nullptr);
    }

    TEST_CASE("the picture of a lock has its parts, each with its line, and no others") {
        Checked locked(open_in_front);
        const BackendInput input{
            locked.design.piece(), *locked.design.compilation().sources, locked.solids, {}};
        Diagnostics diagnostics;
        const auto picture = locked_picture(input, {PartId{0}, PartId{1}, PartId{3}}, diagnostics);
        REQUIRE(picture.has_value());
        CHECK(diagnostics.list().empty());
        CHECK(picture->find("parts that lock each other") != std::string::npos);
        for (const char* part : {"left post", "right post", "lower"})
            CHECK(picture->find(part) != std::string::npos);
        CHECK(picture->find("upper") == std::string::npos);
    }
}
