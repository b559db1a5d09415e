#include "compiler/evaluate/linear.hpp"

namespace rodwright {

Linear operator+(Linear a, const Linear& b) {
    a.constant += b.constant;
    a.terms.insert(a.terms.end(), b.terms.begin(), b.terms.end());
    return a;
}

Linear operator-(Linear a, const Linear& b) {
    a.constant -= b.constant;
    a.terms.reserve(a.terms.size() + b.terms.size());
    for (const Term& term : b.terms) a.terms.push_back({term.unknown, -term.factor});
    return a;
}

Linear operator*(Linear a, const Rational& factor) {
    a.constant *= factor;
    for (Term& term : a.terms) term.factor *= factor;
    return a;
}

}  // namespace rodwright
