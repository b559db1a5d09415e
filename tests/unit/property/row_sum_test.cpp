#include <doctest/doctest.h>

#include <fmt/format.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/property");

namespace {

struct Layout {
    long count = 0;
    std::vector<Rational> sizes;
    std::vector<Rational> gaps;
    Rational first_end;
    Rational last_end;

    Rational sum() const {
        Rational total = first_end + last_end;
        for (const Rational& size : sizes) total += size;
        for (const Rational& gap : gaps) total += gap;
        return total;
    }
};

std::string length_text(const Rational& value) {
    return value.get_num().get_str() + "mm / " + value.get_den().get_str();
}

// A row from 13 mm on over that span, measured.
Layout lay_out(const std::string& count, const Rational& span, const std::string& size,
               const std::string& lines) {
    const Rational start = 13;
    const CompiledDesign design = compile_body(
        fmt::format("part slat[{}] {{ grain wide; left = 0; wide = 90mm; bottom = 0; tall = 5mm; {} }}\n"
                    "space slat along deep from piece.front + 13mm to piece.front + 13mm + {} {{ {} }}\n",
                    count, size, length_text(span), lines));
    Layout layout;
    const std::vector<Part>& parts = design.piece().parts;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        layout.sizes.push_back(parts[i].body.size(Axis::deep));
        if (i > 0) layout.gaps.push_back(parts[i].body.low[Axis::deep] - parts[i - 1].body.high[Axis::deep]);
    }
    layout.count = static_cast<long>(parts.size());
    layout.first_end = parts.front().body.low[Axis::deep] - start;
    layout.last_end = start + span - parts.back().body.high[Axis::deep];
    return layout;
}

void check_even(const Layout& layout, const Rational& span) {
    CHECK(layout.sum() == span);
    CHECK(layout.first_end == layout.last_end);
    for (const Rational& gap : layout.gaps) CHECK(gap == layout.gaps.front());
    for (const Rational& size : layout.sizes) CHECK(size == layout.sizes.front());
}

const std::vector<long> counts = {2, 3, 4, 7, 9, 16, 33, 100};
const std::vector<Rational> spans = {500, ratio(127 * 45, 10), ratio(1000, 3), ratio(857, 7)};
const std::vector<Rational> sizes = {2, ratio(127, 320), ratio(22, 7)};

}  // namespace

TEST_CASE("parts, gaps and ends sum to the span: the gap is found") {
    for (const long n : counts) {
        for (const Rational& span : spans) {
            for (const Rational& size : sizes) {
                const Rational ends = span / 40;
                const Layout layout = lay_out(std::to_string(n), span, "deep = " + length_text(size),
                                              "ends = " + length_text(ends));
                check_even(layout, span);
                REQUIRE(layout.count == n);
                CHECK(layout.first_end == ends);
                CHECK(layout.sizes.front() == size);
                CHECK(layout.gaps.front() == Rational((span - n * size - 2 * ends) / (n - 1)));
            }
        }
    }
}

TEST_CASE("the ends are found") {
    for (const long n : counts) {
        for (const Rational& span : spans) {
            const Rational gap = span / (3 * n);
            const Layout layout =
                lay_out(std::to_string(n), span, "deep = 1/64\"", "gap = " + length_text(gap));
            check_even(layout, span);
            CHECK(layout.first_end == Rational((span - n * ratio(127, 320) - (n - 1) * gap) / 2));
        }
    }
}

TEST_CASE("the size is found") {
    for (const long n : counts) {
        for (const Rational& span : spans) {
            const Layout layout = lay_out(std::to_string(n), span, "", "gap = 1/64\"; ends = 1mm / 3");
            check_even(layout, span);
            const Rational rest = span - (n - 1) * ratio(127, 320) - ratio(2, 3);
            CHECK(layout.sizes.front() == Rational(rest / n));
        }
    }
}

TEST_CASE("the count is found: no other whole number comes nearer to the wanted gap") {
    for (const Rational& span : spans) {
        for (const Rational& wanted : {Rational(3), ratio(127, 10), ratio(100, 9)}) {
            const Rational size = 7;
            const Rational ends = ratio(5, 3);
            const Layout layout = lay_out("fit", span, "deep = 7mm",
                                          "gap = " + length_text(wanted) + "; ends = " + length_text(ends));
            check_even(layout, span);
            CHECK(layout.first_end == ends);
            // What n parts with the wanted gap fill is nearer to the span than what one more or less would.
            const auto off = [&](long n) {
                return Rational(abs(n * size + (n - 1) * wanted + 2 * ends - span));
            };
            CHECK(off(layout.count) <= off(layout.count + 1));
            CHECK(off(layout.count) <= off(layout.count - 1));
        }
    }
}

TEST_SUITE_END();
