#include "compiler/quantity/rational.hpp"

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

std::string to_text(const Rational& value) {
    return value.get_str();
}

}  // namespace rodwright
