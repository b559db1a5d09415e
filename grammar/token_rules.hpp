// Tokens of rod.ebnf.
#pragma once

#include "grammar/rule_kit.hpp"

namespace rodwright::rules {

using pegtl::at;
using pegtl::digit;
using pegtl::not_at;
using pegtl::one;
using pegtl::opt;
using pegtl::plus;
using pegtl::seq;
using pegtl::sor;
using pegtl::star;

struct name : lexeme<plain_word> {};
struct word : lexeme<plain_word> {};
struct axis : lexeme<one_of<"wide", "deep", "tall">> {};
struct hand : lexeme<one_of<"left", "right", "front", "back", "bottom", "top", "first", "last">> {};
// A word that the grammar itself asks for and the tree keeps.
template <Text... Words>
struct literal : lexeme<one_of<Words...>> {};

struct text_end : need<"`\"` at the end of the text", one<'"'>> {};
struct string : lexeme<seq<one<'"'>, star<pegtl::not_one<'"', '\n', '\r'>>, text_end>> {};

// Numbers
struct digits : plus<digit> {};
struct decimal : seq<digits, opt<one<'.'>, digits>> {};
struct eighths : seq<one<'/'>, digits> {};
struct mixed : seq<one<'-'>, digits, eighths> {};
struct amount : seq<digits, opt<sor<eighths, mixed, seq<one<'.'>, digits>>>> {};
struct slope : seq<decimal, one<':'>, decimal> {};
struct feet_inches : seq<digits, one<'\''>, opt<one<' ', '-'>>, amount, one<'"'>> {};

inline bool read_unit(Input& in) {
    const std::string_view rest = in.rest();
    if (rest.starts_with('"') || rest.starts_with('\'')) return take(in, 1);
    const std::size_t blank = rest.starts_with(' ') ? 1 : 0;
    const std::string_view after = rest.substr(blank);
    const std::size_t length = after.starts_with('%') ? 1 : word_length(after);
    return length > 0 && is_unit_word(after.substr(0, length)) && take(in, blank + length);
}

// Whether something stands at a number that would make it another number, or none: 3inch, 5-3, 3,5 mm.
inline bool spoils_number(Input& in) {
    const std::string_view rest = in.rest();
    if (rest.empty()) return false;
    const auto digit_at = [&](std::size_t i) { return i < rest.size() && rest[i] >= '0' && rest[i] <= '9'; };
    if (is_word_part(rest[0])) return true;
    if (rest[0] == '-' || (rest[0] == ',' && in.brackets == 0)) return digit_at(1);
    if (rest[0] != ' ' && rest[0] != '\t') return false;
    const std::string_view after = rest.substr(std::min(rest.find_first_not_of(" \t"), rest.size()));
    return is_unit_word(after.substr(0, word_length(after)));
}

struct unit_mark : leaf<read_unit> {};
struct spoiled : leaf<spoils_number> {};
struct number_end : sor<not_at<spoiled>, pegtl::raise<Wanted<"a number", "number">>> {};
struct measure : sor<feet_inches, slope, seq<amount, opt<unit_mark>>> {};
struct number : seq<lexeme<measure>, number_end> {};

// Signs
struct comma : seq<mark<','>, wide_gap> {};
struct equals : token<lexeme<seq<one<'='>, not_at<one<'='>>>>> {};
struct minus_sign : token<mark<'-'>> {};
struct arithmetic_operator : seq<mark<'+', '-', '*', '/'>, wide_gap> {};
struct comparison_operator
    : seq<lexeme<sor<seq<one<'<', '>'>, opt<one<'='>>>, seq<one<'=', '!'>, one<'='>>>>, wide_gap> {};
struct logic_operator : seq<lexeme<one_of<"and", "or">>, wide_gap> {};
struct not_sign : key<"not"> {};

}  // namespace rodwright::rules
