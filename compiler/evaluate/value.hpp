// What an expression can be worth.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "compiler/evaluate/linear.hpp"
#include "compiler/geometry/geometry.hpp"
#include "compiler/quantity/quantity.hpp"

namespace rodwright {

struct Nothing {  // `none`
    friend bool operator==(const Nothing&, const Nothing&) = default;
};

// A bare word that names nothing: `slide = width`.
struct Word {
    std::string text;
    friend bool operator==(const Word&, const Word&) = default;
};

struct Text {
    std::string text;
    friend bool operator==(const Text&, const Text&) = default;
};

// `(a, b)` or `(a, b, c)`.
struct PointValue {
    std::vector<Rational> at;
    friend bool operator==(const PointValue&, const PointValue&) = default;
};

struct ProfileValue {
    std::vector<Point2> corners;
    friend bool operator==(const ProfileValue&, const ProfileValue&) = default;
};

// `box(...)`, `cylinder(...)`, `prism(...)`: sizes as given, not yet placed in a frame.
struct BodyValue {
    BodyForm form{};
    Rational size_u;
    Rational size_v;
    Rational length;
    std::vector<Point2> profile;
    friend bool operator==(const BodyValue&, const BodyValue&) = default;
};

using Value = std::variant<Nothing, Quantity, Linear, bool, Word, Text, PointValue, ProfileValue, BodyValue>;

// What a text counts for among steps: one for as many bytes as are in a machine word.
inline constexpr std::size_t text_bytes_per_step = 8;

// What a value takes to make or to copy: machine words of its numbers and texts, and one.
std::size_t steps_of(const Value& value);

// "a length", "a word", "yes or no": for messages.
std::string describe(const Value& value);

}  // namespace rodwright
