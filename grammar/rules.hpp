// The grammar of rod.ebnf as PEGTL rules. Only parse.cpp includes it, and the tests of the grammar itself.
#pragma once

#include "grammar/joint_rules.hpp"

namespace rodwright::rules {

// Statement words are names too (`thick = 1/4"`): a word is one where an equation or a shape goes on behind
// it.
struct apply_ahead : seq<plain_word, opt<whole_bracket>, gap, one_of<"on">> {};
struct goes_on : sor<one<'(', '[', '.'>,
                     seq<gap, sor<one<'=', '+', '*', '/'>, seq<one<'-'>, pegtl::blank>, one_of<"on">>>> {};
struct name_ahead : seq<plain_word, goes_on> {};
struct phrase : sor<seq<at<apply_ahead>, apply>, equation> {};

struct design_statement : sor<part, join, let, param, grain, space, fasten, wood, require, if_statement, load,
                              unit, finish, assembly, place, variant, made, done, taken, accept, climate,
                              thick, rake, splay, glued, show, matched, opens, used_as> {};
struct body_statement : sor<step, check, remove, leave, needs, trim, extend, blend, bevel, slides, lets, glue,
                            hold, supply, doc, joint, shape> {};
struct statement : sor<seq<at<name_ahead>, phrase>, design_statement, body_statement, phrase> {};

struct statement_end : need<"a line end or `;`", seq<at<sor<one<';', '}'>, pegtl::eolf>>, lines>> {};
struct whole_statement : seq<need<"a statement", statement>, statement_end> {};
struct unreadable : leaf<read_unreadable> {};
struct broken : unreadable {};
struct item : sor<attempt<whole_statement>, seq<broken, lines>> {};
struct block
    : seq<mark<'{'>, lines, star<not_at<sor<one<'}'>, pegtl::eof>>, item>, need<"`}`", mark<'}'>>, gap> {
    static constexpr bool nests = true;
};

// `use table` is a statement.
struct use_ahead : seq<one_of<"use">, gap, not_at<plain_word>> {};
struct stray_brace : seq<at<one<'}'>>, pegtl::raise<Wanted<"nothing to close", "">>> {};
struct whole_definition
    : seq<need<"a definition",
               sor<stray_brace, seq<at<name_ahead>, phrase>, piece, seq<at<use_ahead>, use>, statement>>,
          statement_end> {};
struct definition : sor<attempt<whole_definition>, seq<broken, lines>> {};
struct file : seq<lines, star<not_at<pegtl::eof>, definition>> {};

}  // namespace rodwright::rules
