#include "compiler/quantity/rational.hpp"

#include <array>
#include <charconv>

namespace rodwright {

Rational floor(const Rational& value) {
    mpz_class whole;
    mpz_fdiv_q(whole.get_mpz_t(), value.get_num_mpz_t(), value.get_den_mpz_t());
    return Rational(whole);
}

Rational ceil(const Rational& value) {
    mpz_class whole;
    mpz_cdiv_q(whole.get_mpz_t(), value.get_num_mpz_t(), value.get_den_mpz_t());
    return Rational(whole);
}

Rational round(const Rational& value) {
    const Rational half = ratio(1, 2);
    const Rational shifted = value < 0 ? Rational(value - half) : Rational(value + half);
    return value < 0 ? ceil(shifted) : floor(shifted);
}

Rational from_double(double value) {
    constexpr mp_bitcnt_t bits = 40;
    Rational scaled(value);
    mpq_mul_2exp(scaled.get_mpq_t(), scaled.get_mpq_t(), bits);
    Rational nearest = round(scaled);
    mpq_div_2exp(nearest.get_mpq_t(), nearest.get_mpq_t(), bits);
    return nearest;
}

static void append_whole(std::string& text, const mpz_class& value) {
    if (value.fits_slong_p()) {
        std::array<char, 24> digits{};
        const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value.get_si()).ptr;
        text.append(digits.data(), end);
    } else {
        text += value.get_str();
    }
}

void append_exact(std::string& text, const Rational& value) {
    append_whole(text, value.get_num());
    if (value.get_den() != 1) {
        text += '/';
        append_whole(text, value.get_den());
    }
    text += ' ';
}

std::string to_text(const Rational& value) {
    return value.get_str();
}

}  // namespace rodwright
