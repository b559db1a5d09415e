// Expressions of rod.ebnf. Operators are only listed here, in reading order; build.cpp gives them their
// precedence, which keeps the grammar small and its recursion shallow.
#pragma once

#include "grammar/token_rules.hpp"

namespace rodwright::rules {

struct expr;
struct value : need<"a value", expr> {};
struct condition_value : need<"a condition", expr> {};

struct closing : need<"`)`", mark<')'>> {};

// `name =` before an argument, a parameter or an equation.
struct assignment : seq<plain_word, gap, one<'='>, not_at<one<'='>>> {};
struct argument : sor<seq<at<assignment>, token<name>, equals, value>, expr> {};
struct arguments : seq<argument, star<comma, sor<at<one<')'>>, need<"an argument", argument>>>> {};
struct argument_list : inside<seq<mark<'('>, gap, opt<arguments>, closing>> {};

struct call_arguments : argument_list {};
struct copy_words : seq<plus<token<hand>>, at<one<']'>>> {};
struct copy : inside<seq<mark<'['>, gap, need<"which copy", sor<copy_words, expr>>, need<"`]`", mark<']'>>>> {
};
struct member : seq<mark<'.'>, need<"a face or size", name>> {};
struct selection : star<sor<member, copy>> {};

// The piece itself is spoken of as `piece.left`.
struct piece_name : lexeme<seq<one_of<"piece">, at<one<'.'>>>> {};
struct named : sor<seq<name, opt<call_arguments>>, piece_name> {};
struct bracketed : inside<seq<mark<'('>, gap, value, opt<comma, value, opt<comma, value>>, closing>> {};
struct point : inside<seq<mark<'('>, gap, value, need<"`,`", comma>, value, opt<comma, value>, closing>> {};
struct none : lexeme<one_of<"none">> {};
struct given : lexeme<one_of<"given">> {};
struct primary : sor<named, number, bracketed, string, none, given> {};
struct postfix : seq<primary, selection, gap> {};

struct nearest
    : seq<key<"nearest">, need<"what is to be the nearest", token<word>>, need<"`to`", key<"to">>, value> {
    static constexpr bool nests = true;
};
struct operand : sor<postfix, nearest> {};
struct signed_operand : sor<operand, seq<plus<minus_sign>, need<"a value", operand>>> {};
struct sum : seq<signed_operand, star<arithmetic_operator, need<"a value", signed_operand>>> {};
struct comparison : seq<sum, opt<comparison_operator, need<"a value", sum>>> {};
struct clause : sor<comparison, seq<plus<not_sign>, need<"a condition", comparison>>> {};

struct chain : seq<clause, star<logic_operator, need<"a condition", clause>>> {};
struct choice : seq<key<"if">, condition_value, need<"`then`", key<"then">>, value,
                    need<"`else`", key<"else">>, value> {
    static constexpr bool nests = true;
};
struct expr : sor<chain, choice> {};

// What stands in fewer places than an expression.
struct additive : sum {};
struct ref : seq<sor<name, piece_name>, selection, gap> {};
struct call : seq<name, argument_list, gap> {};
struct joint_call : seq<name, opt<argument_list>, gap> {};

}  // namespace rodwright::rules
