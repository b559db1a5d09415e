#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "compiler/place/linear_system.hpp"
#include "compiler/quantity/quantity.hpp"

namespace {

using namespace rodwright;

using Equations = std::vector<LinearEquation>;

struct System {
    std::size_t unknown_count = 0;
    Equations equations;
};

void add(Equations& equations, std::vector<Term> terms, Rational constant) {
    equations.push_back({std::move(constant), std::move(terms)});
}

Term term(std::size_t unknown, long factor = 1) {
    return {Unknown{static_cast<std::uint32_t>(unknown)}, Rational(factor)};
}

void shuffle(Equations& equations) {
    std::mt19937 random(5);
    std::ranges::shuffle(equations, random);
}

// Each unknown an inch and an eighth past the one before; the first is known.
System chain(std::size_t count) {
    System system{count, {}};
    add(system.equations, {term(0)}, -100);
    for (std::size_t i = 1; i < count; ++i) add(system.equations, {term(i), term(i - 1, -1)}, inches(-9, 8));
    shuffle(system.equations);
    return system;
}

// Every unknown hangs on the first.
System star(std::size_t count) {
    System system{count, {}};
    add(system.equations, {term(0)}, -100);
    for (std::size_t i = 1; i < count; ++i) {
        add(system.equations, {term(i), term(0, -1)}, inches(-static_cast<long>(i % 100), 8));
    }
    shuffle(system.equations);
    return system;
}

// Rows and columns of equal steps: nearly every unknown is determined twice.
System grid(std::size_t count) {
    const auto side = static_cast<std::size_t>(std::sqrt(static_cast<double>(count)));
    System system{side * side, {}};
    add(system.equations, {term(0)}, -100);
    for (std::size_t i = 1; i < side * side; ++i) {
        if (i % side != 0) add(system.equations, {term(i), term(i - 1, -1)}, inches(-9, 8));
        if (i >= side) add(system.equations, {term(i), term(i - side, -1)}, inches(-7, 3));
    }
    shuffle(system.equations);
    return system;
}

// Parts of three unknowns (low face, high face, size), each on the one before; all but a few have the size of
// the first part, which is only found from the total. All of it is one core.
System stack(std::size_t count) {
    const std::size_t parts = count / 3;
    System system{parts * 3, {}};
    for (std::size_t p = 0; p < parts; ++p) {
        const std::size_t low = 3 * p;
        add(system.equations, {term(low + 1), term(low, -1), term(low + 2, -1)}, 0);
        if (p > 0) add(system.equations, {term(low), term(low - 2, -1)}, inches(-1, 16));
        if (p > 0) add(system.equations, {term(low + 2), term(2, -1)}, p % 7 == 0 ? 3 : 0);
    }
    add(system.equations, {term(0)}, 0);
    add(system.equations, {term(parts * 3 - 2)}, inches(-100'000));
    shuffle(system.equations);
    return system;
}

// Each unknown is the difference of two random ones before it; one in twenty is tied to a far one once more.
System woven(std::size_t count) {
    System system{count, {}};
    std::mt19937 random(9);
    std::vector<long> hidden(count, 3);
    add(system.equations, {term(0)}, -3);
    for (std::size_t i = 1; i < count; ++i) {
        const std::size_t a = random() % i;
        const std::size_t b = i - 1 - random() % std::min<std::size_t>(i, 20);
        const long constant = static_cast<long>(random() % 9);
        hidden[i] = (hidden[a] - hidden[b]) % 1000 + constant;
        add(system.equations, {term(i), term(a, -1), term(b)}, hidden[a] - hidden[b] - hidden[i]);
    }
    for (std::size_t i = 0; i < count / 20; ++i) {
        const std::size_t a = random() % count;
        const std::size_t b = random() % count;
        if (a != b) add(system.equations, {term(a), term(b, -1)}, hidden[b] - hidden[a]);
    }
    shuffle(system.equations);
    return system;
}

// A system with one equation more, last, that its last unknown does not keep.
template <System (*Make)(std::size_t)>
System contradicted(std::size_t count) {
    System system = Make(count);
    add(system.equations, {term(system.unknown_count - 1)}, 1);
    return system;
}

// A system whose first unknown nothing holds.
template <System (*Make)(std::size_t)>
System loose(std::size_t count) {
    System system = Make(count);
    std::erase_if(system.equations, [](const LinearEquation& each) {
        return each.terms.size() == 1 && each.terms.front().unknown == Unknown{0};
    });
    return system;
}

template <System (*Make)(std::size_t)>
void solve_system(benchmark::State& state) {
    const System system = Make(static_cast<std::size_t>(state.range(0)));
    for (auto round : state) benchmark::DoNotOptimize(solve(system.unknown_count, system.equations));
    state.SetComplexityN(state.range(0));
}

#define RODWRIGHT_SYSTEM(make)             \
    BENCHMARK_TEMPLATE(solve_system, make) \
        ->RangeMultiplier(2)               \
        ->Range(1500, 24'000)              \
        ->Unit(benchmark::kMillisecond)    \
        ->Complexity()

RODWRIGHT_SYSTEM(chain);
RODWRIGHT_SYSTEM(star);
RODWRIGHT_SYSTEM(grid);
RODWRIGHT_SYSTEM(stack);
RODWRIGHT_SYSTEM(woven);
RODWRIGHT_SYSTEM(loose<chain>);
RODWRIGHT_SYSTEM(loose<star>);
RODWRIGHT_SYSTEM(loose<grid>);
RODWRIGHT_SYSTEM(contradicted<chain>);
RODWRIGHT_SYSTEM(contradicted<star>);
RODWRIGHT_SYSTEM(contradicted<grid>);
RODWRIGHT_SYSTEM(contradicted<stack>);
RODWRIGHT_SYSTEM(contradicted<woven>);

}  // namespace
