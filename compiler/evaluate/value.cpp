#include "compiler/evaluate/value.hpp"

namespace rodwright {

namespace {

struct Describe {
    std::string operator()(const Nothing&) const { return "`none`"; }
    std::string operator()(const Quantity& quantity) const {
        const std::string name = dimension_name(quantity.dimension);
        const bool vowel = name.find_first_of("aeiou") == 0;
        return (vowel ? "an " : "a ") + name;
    }
    std::string operator()(const Linear&) const { return "a size that is not known before placement"; }
    std::string operator()(bool) const { return "a yes or no"; }
    std::string operator()(const Word& word) const { return "the word `" + word.text + "`"; }
    std::string operator()(const Text&) const { return "a text"; }
    std::string operator()(const PointValue&) const { return "a point"; }
    std::string operator()(const ProfileValue&) const { return "a profile"; }
    std::string operator()(const BodyValue&) const { return "a body"; }
};

std::size_t words(const Rational& number) {
    return mpz_size(number.get_num_mpz_t()) + mpz_size(number.get_den_mpz_t());
}

std::size_t words(const std::string& text) {
    return text.size() / text_bytes_per_step;
}

std::size_t words(const std::vector<Point2>& corners) {
    std::size_t sum = 0;
    for (const Point2& corner : corners) sum += words(corner.u) + words(corner.v);
    return sum;
}

struct Words {
    std::size_t operator()(const Quantity& quantity) const { return words(quantity.value); }
    std::size_t operator()(const Linear& linear) const {
        std::size_t sum = words(linear.constant);
        for (const Term& term : linear.terms) sum += 1 + words(term.factor);
        return sum;
    }
    std::size_t operator()(const Word& word) const { return words(word.text); }
    std::size_t operator()(const Text& text) const { return words(text.text); }
    std::size_t operator()(const ProfileValue& profile) const { return words(profile.corners); }
    std::size_t operator()(const BodyValue& body) const {
        return words(body.size_u) + words(body.size_v) + words(body.length) + words(body.profile);
    }
    template <typename Other>
    std::size_t operator()(const Other&) const {
        return 0;
    }
};

}  // namespace

std::size_t steps_of(const Value& value) {
    return 1 + std::visit(Words{}, value);
}

std::string describe(const Value& value) {
    return std::visit(Describe{}, value);
}

}  // namespace rodwright
