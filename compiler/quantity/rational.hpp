// Exact rational numbers, from GMP.
//
// GMP's operators make expression templates: write `Rational sum = a + b`, never `auto sum = a + b`.
#pragma once

#include <gmpxx.h>

#include <string>

namespace rodwright {

using Rational = mpq_class;

// numerator/denominator in lowest terms; the denominator is not zero.
inline Rational ratio(long numerator, long denominator = 1) {
    Rational r(numerator, denominator);
    r.canonicalize();
    return r;
}

// The whole number at or below, at or above, and nearest (halves away from zero).
Rational floor(const Rational& value);
Rational ceil(const Rational& value);
Rational round(const Rational& value);

// A double as a rational of few bits: the multiple of 2^-40 nearest to it. Trigonometry comes back into exact
// arithmetic through here, so that the last bits of a platform's libm do not show. The value must be finite.
Rational from_double(double value);

// "5/8", "-3", for dumps.
std::string to_text(const Rational& value);
// The same and a blank, put behind `text`: for keys, where thousands are written.
void append_exact(std::string& text, const Rational& value);

}  // namespace rodwright
