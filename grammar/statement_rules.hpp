// Statements of rod.ebnf that stand in a piece, a part or an assembly.
#pragma once

#include "grammar/expression_rules.hpp"

namespace rodwright::rules {

struct block;
struct open_block : need<"`{`", block> {};
struct a_name : need<"a name", token<name>> {};
struct a_text : need<"a text in quotes", token<string>> {};
struct an_axis : need<"`wide`, `deep` or `tall`", token<axis>> {};
struct an_equals : need<"`=`", equals> {};
struct a_to : need<"`to`", key<"to">> {};
struct an_along : need<"`along`", key<"along">> {};

struct from_clause : seq<key<"from">, value> {};
struct to_clause : seq<key<"to">, value> {};

struct use : seq<key<"use">, need<"the file's name in quotes", token<string>>> {};
struct piece : seq<key<"piece">, need<"the piece's title in quotes", token<string>>, open_block> {};
struct unit : seq<key<"unit">, need<"`in` or `mm`", token<literal<"in", "mm">>>, opt<to_clause>> {};
struct param : seq<key<"param">, a_name, an_equals, value, opt<from_clause>, opt<to_clause>> {};
struct let : seq<key<"let">, a_name, an_equals, value> {};
struct wood : seq<key<"wood">, a_name, an_equals, need<"a wood", token<word>>,
                  star<sor<token<word>, token<number>>>> {};

struct count_value : sor<seq<token<literal<"fit">>, at<one<']'>>>, need<"how many, or `fit`", expr>> {};
struct count : inside<seq<mark<'['>, gap, count_value, need<"`]`", mark<']'>>>> {};
struct of : seq<key<"of">, need<"a wood", token<name>>> {};
struct handed : seq<key<"handed">, an_axis, opt<token<axis>>> {};
struct after_of : seq<opt<opt<comma>, handed>> {};
struct part_words : sor<seq<token<count>, opt<of>, after_of>, seq<of, after_of>, seq<opt<comma>, handed>> {};
struct part : seq<key<"part">, need<"the part's name", token<name>>,
                  sor<seq<part_words, open_block>, need_after<"`{`", "the part's name", block>>> {};
struct space : seq<key<"space">, need<"the row's name", token<name>>, an_along, an_axis,
                   need<"`from`", key<"from">>, value, a_to, value, opt<block>> {};

struct a_ref : need<"a part", ref> {};
struct side : seq<a_ref, star<comma, a_ref>> {};
struct with_joint : seq<need<"`with`", key<"with">>, need<"a joint's name", joint_call>> {};
struct join : seq<key<"join">, side, a_to, side, with_joint> {};
struct fasten : seq<key<"fasten">, side, a_to, side, with_joint> {};

struct load : seq<key<"load">, value, need<"`on`", key<"on">>, a_ref,
                  opt<key<"at">, need<"a place on the face", token<word>>>> {};
struct use_detail : seq<not_at<one_of<"for", "on">>, token<word>> {};
struct people : seq<key<"for">, value> {};
struct upon : seq<key<"on">, side> {};
struct used_as : seq<key<"use">, need<"what it is used as, like `table`", token<word>>, opt<use_detail>,
                     opt<people>, opt<upon>> {};
struct require : seq<key<"require">, condition_value, opt<token<string>>> {};
struct from_one_board : seq<key<"from">, need<"`one board`", key<"one">>, need<"`board`", key<"board">>> {};
struct in_sequence : seq<key<"in">, need<"`sequence`", key<"sequence">>> {};
struct as_book : seq<key<"as">, need<"`book`", key<"book">>> {};
struct matched : seq<key<"match">, side,
                     need<"`from one board`, `in sequence` or `as book`",
                          token<sor<from_one_board, in_sequence, as_book>>>> {};
struct finish : seq<key<"finish">, need<"a finish", token<word>>, opt<key<"coats">, value>> {};

struct parameter : seq<token<name>, opt<equals, value>> {};
struct parameters : seq<parameter, star<comma, need<"a parameter", parameter>>> {};
struct parameter_list : inside<seq<mark<'('>, gap, opt<parameters>, closing>> {};
struct assembly : seq<key<"assembly">, a_name, opt<token<parameter_list>>, open_block> {};
struct place : seq<key<"place">, need<"an assembly's name", token<name>>, need<"`as`", key<"as">>, a_name,
                   opt<token<argument_list>>, opt<block>> {};
struct variant : seq<key<"variant">, need<"the variant's name in quotes", token<string>>, open_block> {};
struct made : seq<key<"made">, a_ref, open_block> {};
// A stage's word too, of which one is a word of the language.
struct step_name : lexeme<sor<one_of<"assembly">, seq<plain_word, opt<one<'.'>, plain_word>>>> {};
struct a_step : need<"a step", token<step_name>> {};
struct done : seq<key<"done">, a_step, star<comma, a_step>, opt<upon>> {};
struct over : seq<key<"over">, value> {};
struct from_the_work
    : seq<need<"`from the work`", key<"from">>, need<"`the work`", key<"the">>, need<"`work`", key<"work">>> {
};
struct taken : seq<key<"take">, an_axis, star<comma, an_axis>, from_the_work, opt<over>> {};
struct because : seq<key<"because">, a_text> {};
struct accept
    : seq<key<"accept">, need<"what is accepted", token<word>>, opt<upon>, need<"`because`", because>> {};
struct opens : seq<key<"opens">, need<"`by`", key<"by">>, value> {};

struct made_at : seq<key<"made">, need<"`at`", key<"at">>, value> {};
struct climate : seq<key<"climate">, value, a_to, value, need<"`at`", key<"at">>, value, opt<made_at>> {};

struct if_statement : seq<key<"if">, condition_value, need_after<"`{`", "the condition", block>,
                          opt<key<"else">, need<"`{` or `if`", sor<block, if_statement>>>> {
    static constexpr bool nests = true;
};
struct grain : seq<key<"grain">, an_axis> {};
struct thick : seq<key<"thick">, an_axis> {};
struct show : seq<key<"show">, need<"a face", token<word>>, need<"`face`", key<"face">>> {};
struct about : seq<key<"at">, need<"a face", token<word>>> {};
struct rake : seq<key<"rake">, value, opt<about>> {};
struct splay : seq<key<"splay">, value, opt<about>> {};
struct boards : token<literal<"boards">> {};
struct each : seq<key<"each">, value, a_to, value> {};
struct glued : seq<key<"glued">, need<"`from`", key<"from">>,
                   sor<boards, seq<need<"`boards`", expr>, need<"`boards`", boards>>>, opt<opt<comma>, each>,
                   opt<token<literal<"alternating">>>> {};

struct selector : plus<token<word>> {};
struct a_selector : need<"a face or edge", selector> {};
struct apply : seq<joint_call, key<"on">, a_selector, star<comma, a_selector>> {};
struct equation : seq<expr, an_equals, value> {};

}  // namespace rodwright::rules
