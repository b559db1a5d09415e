// Building the text of single statements (print_statement.cpp, print_expression.cpp) and of whole files
// (print.cpp). Internal to the printer.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "grammar/tree.hpp"

namespace rodwright {

// Text of one statement, with the places where it may go on in the next line.
struct Phrase {
    std::string text;
    std::vector<std::size_t> breaks;

    Phrase& operator<<(std::string_view more) {
        text += more;
        return *this;
    }
    // A blank that may become a line end: behind a comma or a binary operator, or before a clause (rod.ebnf).
    Phrase& soft_break() {
        text += ' ';
        breaks.push_back(text.size());
        return *this;
    }
};

// How tightly an expression has to hold together where it stands; looser ones are put in parentheses.
enum class Tightness { loose = 0, sum = 5, sign = 7, tight = 8 };

void print_expression(Phrase& out, const Tree& tree, NodeId node, Tightness needed = Tightness::loose);
// An expression that follows another one with only a blank between.
void print_operand(Phrase& out, const Tree& tree, NodeId node);

// A statement without its blocks: of one that has a block, what stands before the `{`.
Phrase print_head(const Tree& tree, NodeId statement);

// The width of text in characters.
std::size_t width(std::string_view text);

}  // namespace rodwright
