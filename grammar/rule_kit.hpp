// The few kinds of rule that PEGTL does not have: words, blanks, tokens that are remembered, brackets, and
// `need`, which says in the maker's words what was expected.
#pragma once

#include <algorithm>
#include <cstddef>

#include "grammar/input.hpp"
#include "grammar/scan.hpp"

namespace rodwright::rules {

namespace pegtl = tao::pegtl;
using pegtl::apply_mode;
using pegtl::rewind_mode;

// A text as a template argument.
template <std::size_t N>
struct Text {
    char chars[N] = {};
    constexpr Text(const char (&text)[N]) { std::copy_n(text, N, chars); }
    constexpr std::string_view view() const { return {chars, N - 1}; }
};

// What stood in the way of reading on: "expected WHAT after AFTER"; without AFTER, after the token before.
template <Text What, Text After>
struct Wanted {
    static constexpr std::string_view what = What.view();
    static constexpr std::string_view after = After.view();
};

template <Text What, typename... Rules>
struct need : pegtl::sor<pegtl::seq<Rules...>, pegtl::raise<Wanted<What, "">>> {};
template <Text What, Text After, typename... Rules>
struct need_after : pegtl::sor<pegtl::seq<Rules...>, pegtl::raise<Wanted<What, After>>> {};

// A rule that reads by itself: Reader(Input&) says whether it did.
template <auto Reader>
struct leaf {
    using rule_t = leaf;
    using subs_t = pegtl::empty_list;
    static bool match(Input& in) { return Reader(in); }
};

inline bool take(Input& in, std::size_t length) {
    in.bump(length);
    return length > 0;
}

inline std::string_view next_word(const Input& in) {
    return in.rest().substr(0, word_length(in.rest()));
}

// A word that is not reserved.
inline bool read_plain_word(Input& in) {
    const std::string_view word = next_word(in);
    return !is_reserved(word) && take(in, word.size());
}

// One of the given words, whole: `to` is not the start of `top`.
template <Text... Words>
bool read_one_of(Input& in) {
    const std::string_view rest = in.rest();
    const auto starts = [&](std::string_view word) {
        return rest.starts_with(word) && (rest.size() == word.size() || !is_word_part(rest[word.size()]));
    };
    std::size_t length = 0;
    ((starts(Words.view()) && (length = Words.view().size()) > 0) || ...);
    return take(in, length);
}

inline bool read_bracket(Input& in) {
    return in.rest().starts_with('(') && take(in, bracket_length(in.rest()));
}

// The line end before a clause that goes on with the statement.
inline bool read_carry_on(Input& in) {
    return take(in, carry_on_length(in.rest()));
}

struct plain_word : leaf<read_plain_word> {};
struct carry_on : leaf<read_carry_on> {};
template <Text... Words>
struct one_of : leaf<read_one_of<Words...>> {};
struct whole_bracket : leaf<read_bracket> {};

struct comment : pegtl::seq<pegtl::two<'-'>, pegtl::until<pegtl::at<pegtl::eolf>>> {};

enum class LineEnds { stop, blank, separate };

// Blanks and comments; in brackets line ends too (`blank`: everywhere; `separate`: and `;`). Always matches.
template <LineEnds Ends>
struct blanks {
    using rule_t = blanks;
    using subs_t = pegtl::type_list<comment>;

    static bool skips(const Input& in, char c) {
        if (c == ' ' || c == '\t') return true;
        if (Ends == LineEnds::separate && c == ';') return true;
        if (Ends == LineEnds::stop && in.brackets == 0) return false;
        return c == '\n' || (c == '\r' && in.size() > 1 && in.peek_char(1) == '\n');
    }

    template <apply_mode A, rewind_mode M, template <typename...> class Action,
              template <typename...> class Control, typename... States>
    static bool match(Input& in, States&&... states) {
        while (!in.empty()) {
            const char c = in.peek_char();
            if (skips(in, c)) {
                in.bump();
            } else if (c != '-' ||
                       !Control<comment>::template match<A, rewind_mode::required, Action, Control>(
                           in, states...)) {
                break;
            }
        }
        return true;
    }
};

struct gap : blanks<LineEnds::stop> {};
struct wide_gap : blanks<LineEnds::blank> {};
struct lines : blanks<LineEnds::separate> {};

// A rule that can do something around the matching of another.
template <typename Derived, typename Rule>
struct around {
    using rule_t = around;
    using subs_t = pegtl::type_list<Rule>;

    template <apply_mode A, rewind_mode M, template <typename...> class Action,
              template <typename...> class Control, typename... States>
    static bool match(Input& in, States&&... states) {
        return Derived::run(
            in, [&] { return Control<Rule>::template match<A, M, Action, Control>(in, states...); });
    }
};

// Remembers what it matched as the last token.
template <typename Rule>
struct lexeme : around<lexeme<Rule>, Rule> {
    template <typename Match>
    static bool run(Input& in, Match match) {
        const char* begin = in.current();
        if (!match()) return false;
        in.token_begin = begin;
        in.token_end = in.current();
        return true;
    }
};

// Within it line ends are blanks.
template <typename Rule>
struct inside : around<inside<Rule>, Rule> {
    static constexpr bool nests = true;
    struct Guard {
        explicit Guard(unsigned& brackets) : count(brackets) { ++count; }
        ~Guard() { --count; }
        Guard(const Guard&) = delete;
        Guard& operator=(const Guard&) = delete;
        unsigned& count;
    };
    template <typename Match>
    static bool run(Input& in, Match match) {
        const Guard guard(in.brackets);
        return match();
    }
};

// A statement: false, with nothing consumed, if it could not be read.
template <typename Rule>
struct attempt : around<attempt<Rule>, Rule> {
    template <typename Match>
    static bool run(Input& in, Match match) {
        const char* begin = in.statement = in.current();
        try {
            return match();
        } catch (const Unreadable& error) {
            in.iterator() = begin;
            in.stopped = error.stopped;
            return false;
        }
    }
};

inline bool read_unreadable(Input& in) {
    const auto stopped = static_cast<std::size_t>(std::max(in.stopped, in.current()) - in.current());
    in.token_begin = in.current();
    take(in, statement_length(in.rest(), stopped));
    in.token_end = in.current();
    return true;
}

template <typename Rule>
struct token : pegtl::seq<Rule, gap> {};
template <Text Word>
struct key : token<lexeme<one_of<Word>>> {};
template <char... C>
struct mark : lexeme<pegtl::one<C...>> {};

}  // namespace rodwright::rules
