#include <doctest/doctest.h>

#include <random>
#include <vector>

#include "compiler/limits.hpp"
#include "compiler/quantity/quantity.hpp"

using namespace rodwright;

namespace {

Quantity parsed(std::string_view text) {
    return parse_quantity(text).value();
}

// Quantities of many dimensions with random values.
std::vector<Quantity> random_quantities(std::size_t count) {
    constexpr const char* samples[] = {"1 in", "1", "1:8", "8%", "1 lbf", "3 USD", "1 kg", "14deg", "1 s"};
    std::mt19937 random(7);
    std::vector<Quantity> quantities;
    for (std::size_t i = 0; i < count; ++i) {
        Quantity quantity = parsed(samples[random() % std::size(samples)]);
        quantity.value *= ratio(static_cast<long>(random() % 2001) - 1000, random() % 60 + 1);
        quantities.push_back(std::move(quantity));
    }
    return quantities;
}

}  // namespace

TEST_SUITE("unit/quantity") {
    TEST_CASE("sums need one dimension") {
        CHECK(add(parsed("3/4\""), parsed("19mm"))->value == inches(3, 4) + 19);
        CHECK(subtract(parsed("1 ft"), parsed("1 in"))->value == inches(11));
        CHECK_FALSE(add(parsed("1 in"), parsed("3")));
        CHECK_FALSE(add(parsed("1 in"), parsed("14deg")));
        CHECK_FALSE(add(parsed("3"), parsed("8%")));
        CHECK_FALSE(add(parsed("3"), parsed("1:8")));
        CHECK_FALSE(subtract(parsed("8%"), parsed("1:8")));
        CHECK_FALSE(add(parsed("1 USD"), parsed("1 EUR")));
    }

    TEST_CASE("ratios multiply like numbers") {
        const Quantity rise = multiply(parsed("1:8"), parsed("16 in")).value();
        CHECK(rise.is_length());
        CHECK(rise.value == inches(2));
        CHECK(multiply(parsed("50%"), parsed("10 lbf"))->dimension == Dimension::of(Base::force));
        CHECK(multiply(parsed("8%"), parsed("2"))->dimension.ratio == RatioKind::percentage);
        CHECK(multiply(parsed("2"), parsed("1:8"))->dimension.ratio == RatioKind::slope);
        CHECK(divide(parsed("8%"), parsed("2"))->dimension.ratio == RatioKind::percentage);
        CHECK(multiply(parsed("8%"), parsed("1:8"))->is_number());
        CHECK(divide(parsed("1:8"), parsed("1:4"))->is_number());
        CHECK(divide(parsed("2 in"), parsed("1:8"))->value == inches(16));
        CHECK(divide(parsed("2 in"), parsed("1:8"))->is_length());
        CHECK(divide(parsed("1"), parsed("50%"))->is_number());
    }

    TEST_CASE("quotients of one dimension are plain numbers") {
        CHECK(divide(parsed("1 ft"), parsed("1 in"))->is_number());
        CHECK(divide(parsed("1 ft"), parsed("1 in"))->value == 12);
        CHECK(divide(parsed("6 USD"), parsed("2 USD"))->is_number());
    }

    TEST_CASE("division by zero and mixed currencies have no answer") {
        CHECK_FALSE(divide(parsed("1 in"), parsed("0")));
        CHECK_FALSE(divide(parsed("1 in"), parsed("0 in")));
        CHECK_FALSE(multiply(parsed("1 USD"), parsed("1 EUR")));
        CHECK_FALSE(divide(parsed("1 USD"), parsed("1 EUR")));
    }

    TEST_CASE("a price over an area and back keeps the currency") {
        const Quantity area = multiply(parsed("1 ft"), parsed("1 ft")).value();
        const Quantity price = divide(parsed("12 USD"), area).value();
        CHECK(dimension_name(price.dimension) == "money in USD per area");
        const Quantity cost = multiply(price, multiply(parsed("2 ft"), parsed("3 ft")).value()).value();
        CHECK(cost.value == 72);
        CHECK(cost.dimension == parsed("1 USD").dimension);
    }

    TEST_CASE("products past a power of four are refused") {
        Quantity product = parsed("2 mm");
        for (int power = 2; power <= 4; ++power) product = multiply(product, parsed("2 mm")).value();
        CHECK(product.value == 16);
        CHECK_FALSE(multiply(product, parsed("2 mm")));
        Quantity quotient = parsed("1");
        for (int power = 1; power <= 4; ++power) quotient = divide(quotient, parsed("1 mm")).value();
        CHECK_FALSE(divide(quotient, parsed("1 mm")));
    }

    TEST_CASE("values past the size limit are refused") {
        Quantity big = Quantity::number(Rational(mpz_class(1) << (limits::value_bits - 1)));
        CHECK(add(big, Quantity::number(-1)));
        CHECK_FALSE(add(big, big));
        CHECK_FALSE(multiply(big, parsed("2")));
        const Quantity small = divide(parsed("1"), big).value();
        CHECK_FALSE(divide(small, parsed("2")));
        CHECK(multiply(small, big)->value == 1);
        int squarings = 0;
        for (Quantity value = parsed("3"); squarings < 100; ++squarings) {
            const std::optional<Quantity> next = multiply(value, value);
            if (!next) break;
            value = *next;
        }
        CHECK(squarings == 11);  // 3^(2^11) has 3247 bits, 3^(2^12) has 6493
    }

    TEST_CASE("comparison needs one dimension") {
        CHECK(compare(parsed("1 ft"), parsed("12 in")) == std::strong_ordering::equal);
        CHECK(compare(parsed("19mm"), parsed("3/4\"")) == std::strong_ordering::less);
        CHECK(compare(parsed("20mm"), parsed("3/4\"")) == std::strong_ordering::greater);
        CHECK_FALSE(compare(parsed("1 in"), parsed("1")));
        CHECK_FALSE(compare(parsed("1:8"), parsed("12.5%")));
    }

    TEST_CASE("what is not exact makes its results so") {
        Quantity root = parsed("1.4142 in");
        root.exact = false;
        CHECK_FALSE(add(root, parsed("1 in"))->exact);
        CHECK_FALSE(multiply(parsed("2"), root)->exact);
        CHECK_FALSE(negate(root).exact);
        CHECK(add(parsed("1 in"), parsed("1 in"))->exact);
    }

    TEST_CASE("names of dimensions") {
        CHECK(dimension_name(parsed("3").dimension) == "number");
        CHECK(dimension_name(parsed("1:8").dimension) == "slope");
        CHECK(dimension_name(parsed("8%").dimension) == "percentage");
        CHECK(dimension_name(parsed("70F").dimension) == "temperature");
        CHECK(dimension_name(multiply(parsed("1 in"), parsed("1 in"))->dimension) == "area");
        CHECK(dimension_name(divide(parsed("1 lbf"), parsed("1 in"))->dimension) == "force per length");
        CHECK(dimension_name(multiply(parsed("1 lbf"), parsed("1 in"))->dimension) == "length times force");
        CHECK(dimension_name(divide(parsed("1"), parsed("1 s"))->dimension) == "number per time");
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
