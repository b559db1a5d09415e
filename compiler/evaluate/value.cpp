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

}  // namespace

std::string describe(const Value& value) {
    return std::visit(Describe{}, value);
}

}  // namespace rodwright
