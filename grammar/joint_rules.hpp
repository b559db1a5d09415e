// Statements of rod.ebnf that stand in the body of a joint or a shape.
#pragma once

#include "grammar/statement_rules.hpp"

namespace rodwright::rules {

struct member_kind : sor<token<word>, token<literal<"part">>> {};
struct member_decl
    : seq<token<name>, need<"`:`", token<mark<':'>>>, need<"`end`, `face`, `edge` or `part`", member_kind>> {
};
struct a_member : need<"a member (`name: face`)", member_decl> {};
struct member_list : inside<seq<mark<'('>, gap, a_member, star<comma, a_member>, closing>> {};
struct members : need<"`(` and the members", token<member_list>> {};
struct joint : seq<key<"joint">, a_name, members, open_block> {};
struct shape : seq<key<"shape">, a_name, members, open_block> {};

struct which_member : need<"a member", token<name>> {};
struct a_by : need<"`by`", key<"by">> {};
struct doc : token<string> {};
struct extend : seq<key<"extend">, which_member, a_by, value> {};

struct at_clause : seq<key<"at">, need<"a point `(along, across)`", token<point>>> {};
struct along_clause : seq<key<"along">, value> {};
struct repeat : seq<key<"repeat">, value, need<"`every`", key<"every">>, value, an_along, value> {};
struct body : seq<need<"a form, like `box(1\", 2\", 3\")`", call>,
                  star<opt<carry_on>, sor<at_clause, along_clause, repeat>>> {};
struct leave : seq<key<"leave">, which_member, body> {};
struct remove : seq<key<"remove">, which_member, body> {};
struct trim : seq<key<"trim">, which_member, body> {};
struct blend : seq<key<"blend">, which_member, a_by, value> {};
struct bevel : seq<key<"bevel">, which_member, a_by, value> {};
struct slides : seq<key<"slides">, an_along, value> {};
struct by_clause : seq<key<"by">, value> {};
struct either_way : seq<key<"either">, need<"`way`", key<"way">>> {};
struct lets : seq<key<"lets">, which_member, need<"`move`", key<"move">>, an_along, value, opt<by_clause>,
                  opt<token<either_way>>> {};
struct glue : seq<key<"glue">, need<"what is glued", token<word>>, star<opt<comma>, token<word>>> {};
struct hold : seq<key<"hold">, need<"a fastener", token<word>>, body> {};
struct check : seq<key<"check">, condition_value, opt<carry_on>, need<"`else`", key<"else">>,
                   need<"`warn` or `error`", token<literal<"warn", "error">>>, a_text> {};

struct reach : token<literal<"reach">> {};
struct tool : seq<token<word>, star<sor<seq<reach, need<"a value", additive>>, additive>>> {};
struct a_tool : need<"a tool", tool> {};
struct needs : seq<key<"needs">, a_tool, star<mark<'|'>, wide_gap, a_tool>> {};
struct supply : seq<key<"supply">, need<"what is supplied", token<word>>, value, opt<token<string>>> {};

struct step_word : one_of<"using", "test_piece", "after", "caution"> {};
struct step_member : seq<not_at<step_word>, token<name>> {};
struct cutter
    : seq<token<word>, star<not_at<step_word>, sor<seq<reach, need<"a value", additive>>, additive>>> {};
struct using_tool
    : seq<key<"using">, need<"a tool", token<word>>, opt<key<"with">, need<"a cutter", cutter>>> {};
struct setting : seq<token<word>, an_equals, value> {};
struct setting_end
    : need<"`,`", sor<seq<mark<','>, lines>, seq<at<sor<pegtl::eol, one<';'>>>, lines>, at<one<'}'>>>> {};
struct settings
    : seq<mark<'{'>, lines, star<not_at<one<'}'>>, need<"a setting (`name = value`)", setting>, setting_end>,
          need<"`}`", mark<'}'>>, gap> {};
struct after : seq<key<"after">, a_step, star<comma, a_step>, opt<because>> {};
struct caution : seq<key<"caution">, a_text> {};
struct step_clause : sor<using_tool, settings, token<literal<"test_piece">>, after, caution> {};
struct step : seq<key<"step">, need<"what the step does", token<word>>, opt<step_member>, opt<token<string>>,
                  star<opt<carry_on>, step_clause>> {};

}  // namespace rodwright::rules
