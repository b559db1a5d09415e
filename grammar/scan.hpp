// Small readers of rod text that the grammar, its errors and its recovery share.
#pragma once

#include <cstddef>
#include <string_view>

namespace rodwright {

bool is_word_start(char c);
bool is_word_part(char c);

// The length of the word that `text` begins with (letter, then letters, digits and `_`), or 0.
std::size_t word_length(std::string_view text);

// Words that are never names: rod.ebnf, "tokens".
bool is_reserved(std::string_view word);

// A unit written with letters, or `%`: all of compiler/quantity/units.def but the marks ' and ".
bool is_unit_word(std::string_view word);

// The length of what `text` begins with if that is a comment or a text in quotes (which ends at the latest
// with its line), else 0. `before` is the byte before it: a `"` after a digit is an inch mark.
std::size_t opaque_length(std::string_view text, char before);

// The length of a bracket `(` with all that stands in it, or 0 if it is not closed.
std::size_t bracket_length(std::string_view text);

// The length of the line end and the blanks that `text` begins with if the statement before goes on behind
// them: with a clause of a step, with `repeat` or `else`. If it does not: 0.
std::size_t carry_on_length(std::string_view text);

// The length of the statement that `text` begins with, as far as it can be told from line ends and braces
// alone, given that reading stopped at `stopped`. Without blanks at its end; at least 1.
std::size_t statement_length(std::string_view text, std::size_t stopped);

}  // namespace rodwright
