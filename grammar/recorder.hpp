// The control under which parse.cpp runs the rules: it records an event for each rule that makes a node,
// drops what an alternative recorded that was not taken, counts nesting, and turns a raise into a diagnostic.
#pragma once

#include <type_traits>
#include <vector>

#include "compiler/limits.hpp"
#include "grammar/events.hpp"
#include "grammar/mistakes.hpp"
#include "grammar/rules.hpp"

namespace rodwright {

// Thrown when the file has more mistakes than anybody reads.
struct GiveUp {};

struct Recorder {
    std::string_view text;
    FileId file;
    Diagnostics& diagnostics;
    std::vector<Event> events = {};
    std::vector<Comment> comments = {};
    std::size_t depth = 0;
    std::size_t errors = 0;

    std::uint32_t offset(const char* at) const { return static_cast<std::uint32_t>(at - text.data()); }

    std::uint32_t open(EventKind kind, const char* begin) {
        const std::uint32_t at = offset(begin);
        events.push_back({kind, at, at, 0});
        return static_cast<std::uint32_t>(events.size() - 1);
    }
    void close(std::uint32_t event, const char* end) {
        events[event].end = offset(end);
        events[event].after = static_cast<std::uint32_t>(events.size());
    }
    // Blanks may be tried again by another alternative, but always in the order of the text.
    void comment(const char* begin, const char* end) {
        if (comments.empty() || comments.back().end <= offset(begin))
            comments.push_back({offset(begin), offset(end)});
    }

    [[noreturn]] void fail(const rules::Input& in, Diagnostic diagnostic) {
        diagnostics.add(std::move(diagnostic));
        if (++errors >= limits::diagnostics) throw GiveUp{};
        throw rules::Unreadable{in.token_end};
    }
    Trouble trouble(const rules::Input& in) const {
        return {text,
                file,
                offset(in.current()),
                offset(in.token_begin),
                offset(in.token_end),
                offset(in.statement),
                in.brackets};
    }
    void check_digits(const rules::Input& in) {
        const std::string_view number(in.token_begin,
                                      static_cast<std::size_t>(in.token_end - in.token_begin));
        if (number.size() > limits::number_digits) check_digit_count(in, number);
    }
    void check_digit_count(const rules::Input& in, std::string_view number) {
        const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
        if (static_cast<std::size_t>(std::count_if(number.begin(), number.end(), is_digit)) >
            limits::number_digits) {
            fail(in, too_many_digits(trouble(in)));
        }
    }
};

// The event that a rule is recorded as.
template <typename Rule>
inline constexpr auto event_of = nullptr;
#define RODWRIGHT_RECORD(rule, kind) \
    template <>                      \
    inline constexpr auto event_of<rules::rule> = EventKind::kind;
#define RODWRIGHT_RECORD_SAME(rule) RODWRIGHT_RECORD(rule, rule)
#include "grammar/recorded.def"
#undef RODWRIGHT_RECORD_SAME
#undef RODWRIGHT_RECORD
template <rules::Text... Words>
inline constexpr auto event_of<rules::literal<Words...>> = EventKind::word;

template <typename Rule>
inline constexpr bool makes_event =
    !std::is_same_v<std::remove_const_t<decltype(event_of<Rule>)>, std::nullptr_t>;
template <typename Rule>
concept Nesting = requires {
    Rule::nests;
};

template <typename Rule>
struct Record : tao::pegtl::normal<Rule> {
    using apply_mode = tao::pegtl::apply_mode;
    using rewind_mode = tao::pegtl::rewind_mode;

    template <apply_mode A, rewind_mode M, template <typename...> class Action,
              template <typename...> class Control>
    static bool match(rules::Input& in, Recorder& recorder) {
        const std::size_t events = recorder.events.size();
        const char* const token_begin = in.token_begin;
        const char* const token_end = in.token_end;
        if (match_recorded<A, M, Action, Control>(in, recorder)) return true;
        recorder.events.resize(events);
        in.token_begin = token_begin;
        in.token_end = token_end;
        return false;
    }

    [[noreturn]] static void raise(const rules::Input& in, Recorder& recorder) {
        recorder.fail(in, explain(recorder.trouble(in), Rule::what, Rule::after));
    }

  private:
    template <apply_mode A, rewind_mode M, template <typename...> class Action,
              template <typename...> class Control>
    static bool match_recorded(rules::Input& in, Recorder& recorder) {
        const char* const begin = in.current();
        if constexpr (A == apply_mode::action && makes_event<Rule>) {
            const std::uint32_t event = recorder.open(event_of<Rule>, begin);
            if (!match_nested<A, M, Action, Control>(in, recorder)) return false;
            recorder.close(event, in.token_end);
            if constexpr (std::is_same_v<Rule, rules::number>) recorder.check_digits(in);
            return true;
        } else if constexpr (std::is_same_v<Rule, rules::comment>) {
            if (!match_nested<A, M, Action, Control>(in, recorder)) return false;
            recorder.comment(begin, in.current());
            return true;
        } else {
            return match_nested<A, M, Action, Control>(in, recorder);
        }
    }

    struct Deeper {
        explicit Deeper(std::size_t& counted) : depth(counted) { ++depth; }
        ~Deeper() { --depth; }
        Deeper(const Deeper&) = delete;
        Deeper& operator=(const Deeper&) = delete;
        std::size_t& depth;
    };

    template <apply_mode A, rewind_mode M, template <typename...> class Action,
              template <typename...> class Control>
    static bool match_nested(rules::Input& in, Recorder& recorder) {
        if constexpr (Nesting<Rule>) {
            const Deeper deeper(recorder.depth);
            if (recorder.depth > limits::nesting) recorder.fail(in, too_deep(recorder.trouble(in)));
            return tao::pegtl::match<Rule, A, M, Action, Control>(in, recorder);
        } else {
            return tao::pegtl::match<Rule, A, M, Action, Control>(in, recorder);
        }
    }
};

}  // namespace rodwright
