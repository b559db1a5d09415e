#include <doctest/doctest.h>

#include <random>
#include <vector>

#include "compiler/limits.hpp"
#include "compiler/quantity/quantity.hpp"

using namespace rodwright;

namespace {

Quantity read(std::string_view text) {
    return parse_quantity(text).value();
}

// Quantities of many dimensions with random values.
std::vector<Quantity> random_quantities(std::size_t count) {
    constexpr const char* samples[] = {"1 in", "1", "1:8", "8%", "1 lbf", "3 USD", "1 kg", "14deg", "1 s"};
    std::mt19937 random(7);
    std::vector<Quantity> quantities;
    for (std::size_t i = 0; i < count; ++i) {
        Quantity quantity = read(samples[random() % std::size(samples)]);
        quantity.value *= ratio(static_cast<long>(random() % 2001) - 1000, random() % 60 + 1);
        quantities.push_back(std::move(quantity));
    }
    return quantities;
}

}  // namespace

TEST_SUITE("unit/quantity") {
    TEST_CASE("sums need one dimension") {
        CHECK(add(read("3/4\""), read("19mm"))->value == inches(3, 4) + 19);
        CHECK(subtract(read("1 ft"), read("1 in"))->value == inches(11));
        CHECK_FALSE(add(read("1 in"), read("3")));
        CHECK_FALSE(add(read("1 in"), read("14deg")));
        CHECK_FALSE(add(read("3"), read("8%")));
        CHECK_FALSE(add(read("3"), read("1:8")));
        CHECK_FALSE(subtract(read("8%"), read("1:8")));
        CHECK_FALSE(add(read("1 USD"), read("1 EUR")));
    }

    TEST_CASE("ratios multiply like numbers") {
        const Quantity rise = multiply(read("1:8"), read("16 in")).value();
        CHECK(rise.is_length());
        CHECK(rise.value == inches(2));
        CHECK(multiply(read("50%"), read("10 lbf"))->dimension == Dimension::of(Base::force));
        CHECK(multiply(read("8%"), read("2"))->dimension.ratio == RatioKind::percentage);
        CHECK(multiply(read("2"), read("1:8"))->dimension.ratio == RatioKind::slope);
        CHECK(divide(read("8%"), read("2"))->dimension.ratio == RatioKind::percentage);
        CHECK(multiply(read("8%"), read("1:8"))->is_number());
        CHECK(divide(read("1:8"), read("1:4"))->is_number());
        CHECK(divide(read("2 in"), read("1:8"))->value == inches(16));
        CHECK(divide(read("2 in"), read("1:8"))->is_length());
        CHECK(divide(read("1"), read("50%"))->is_number());
    }

    TEST_CASE("quotients of one dimension are plain numbers") {
        CHECK(divide(read("1 ft"), read("1 in"))->is_number());
        CHECK(divide(read("1 ft"), read("1 in"))->value == 12);
        CHECK(divide(read("6 USD"), read("2 USD"))->is_number());
    }

    TEST_CASE("division by zero and mixed currencies have no answer") {
        CHECK_FALSE(divide(read("1 in"), read("0")));
        CHECK_FALSE(divide(read("1 in"), read("0 in")));
        CHECK_FALSE(multiply(read("1 USD"), read("1 EUR")));
        CHECK_FALSE(divide(read("1 USD"), read("1 EUR")));
    }

    TEST_CASE("a price over an area and back keeps the currency") {
        const Quantity area = multiply(read("1 ft"), read("1 ft")).value();
        const Quantity price = divide(read("12 USD"), area).value();
        CHECK(dimension_name(price.dimension) == "money in USD per area");
        const Quantity cost = multiply(price, multiply(read("2 ft"), read("3 ft")).value()).value();
        CHECK(cost.value == 72);
        CHECK(cost.dimension == read("1 USD").dimension);
    }

    TEST_CASE("products past a power of four are refused") {
        Quantity product = read("2 mm");
        for (int power = 2; power <= 4; ++power) product = multiply(product, read("2 mm")).value();
        CHECK(product.value == 16);
        CHECK_FALSE(multiply(product, read("2 mm")));
        Quantity quotient = read("1");
        for (int power = 1; power <= 4; ++power) quotient = divide(quotient, read("1 mm")).value();
        CHECK_FALSE(divide(quotient, read("1 mm")));
    }

    TEST_CASE("values past the size limit are refused") {
        Quantity big = Quantity::number(Rational(mpz_class(1) << (limits::value_bits - 1)));
        CHECK(add(big, Quantity::number(-1)));
        CHECK_FALSE(add(big, big));
        CHECK_FALSE(multiply(big, read("2")));
        const Quantity small = divide(read("1"), big).value();
        CHECK_FALSE(divide(small, read("2")));
        CHECK(multiply(small, big)->value == 1);
        int squarings = 0;
        for (Quantity value = read("3"); squarings < 100; ++squarings) {
            const std::optional<Quantity> next = multiply(value, value);
            if (!next) break;
            value = *next;
        }
        CHECK(squarings == 11);  // 3^(2^11) has 3247 bits, 3^(2^12) has 6493
    }

    TEST_CASE("comparison needs one dimension") {
        CHECK(compare(read("1 ft"), read("12 in")) == std::strong_ordering::equal);
        CHECK(compare(read("19mm"), read("3/4\"")) == std::strong_ordering::less);
        CHECK(compare(read("20mm"), read("3/4\"")) == std::strong_ordering::greater);
        CHECK_FALSE(compare(read("1 in"), read("1")));
        CHECK_FALSE(compare(read("1:8"), read("12.5%")));
    }

    TEST_CASE("what is not exact makes its results so") {
        Quantity root = read("1.4142 in");
        root.exact = false;
        CHECK_FALSE(add(root, read("1 in"))->exact);
        CHECK_FALSE(multiply(read("2"), root)->exact);
        CHECK_FALSE(negate(root).exact);
        CHECK(add(read("1 in"), read("1 in"))->exact);
    }

    TEST_CASE("names of dimensions") {
        CHECK(dimension_name(read("3").dimension) == "number");
        CHECK(dimension_name(read("1:8").dimension) == "slope");
        CHECK(dimension_name(read("8%").dimension) == "percentage");
        CHECK(dimension_name(read("70F").dimension) == "temperature");
        CHECK(dimension_name(multiply(read("1 in"), read("1 in"))->dimension) == "area");
        CHECK(dimension_name(divide(read("1 lbf"), read("1 in"))->dimension) == "force per length");
        CHECK(dimension_name(multiply(read("1 lbf"), read("1 in"))->dimension) == "length times force");
        CHECK(dimension_name(divide(read("1"), read("1 s"))->dimension) == "number per time");
    }

    TEST_CASE("laws of arithmetic hold for random quantities") {
        const std::vector<Quantity> quantities = random_quantities(300);
        int sums = 0;
        for (std::size_t i = 2; i < quantities.size(); ++i) {
            const Quantity& a = quantities[i];
            const Quantity& b = quantities[i - 1];
            CAPTURE(i);
            const auto product = multiply(a, b);
            const auto swapped = multiply(b, a);
            REQUIRE(product.has_value() == swapped.has_value());
            if (product) {
                REQUIRE(product->value == swapped->value);
                REQUIRE(product->dimension == swapped->dimension);
            }
            if (product && b.value != 0) REQUIRE(divide(*product, b)->value == a.value);
            const auto sum = add(a, b);
            REQUIRE(sum.has_value() == (a.dimension == b.dimension));
            if (!sum) continue;
            ++sums;
            REQUIRE(subtract(*sum, b)->value == a.value);
            REQUIRE(add(a, negate(a))->value == 0);
        }
        CHECK(sums > 10);
    }
}
