#include "backends/words.hpp"

#include <doctest/doctest.h>

#include "tests/support/sample_piece.hpp"

using namespace rodwright;

TEST_SUITE("unit/backends") {
    TEST_CASE("words") {
        CHECK(plain_words("side_apron") == "side apron");
        CHECK(capitalised("ash") == "Ash");
        CHECK(capitalised("\xC3\xA4sh") == "\xC3\xA4sh");
        CHECK(counted(1, "part") == "1 part");
        CHECK(counted(0, "part") == "0 parts");
        CHECK(markdown_text("a|b <c> *d* `e` #f\n\\") == "a\\|b \\<c> \\*d\\* \\`e\\` \\#f \\\\");
        CHECK(character_count("14\xC2\xB0") == 3);
        const Piece piece = sample_piece();
        CHECK(wood_words(piece, "ash") == "white ash, quartered");
        CHECK(wood_words(piece, "elm") == "red elm");
        CHECK(wood_words(piece, "") == "wood not chosen");
        CHECK(wood_words(piece, "old_oak") == "old oak");
    }
}
