// Pseudo-random numbers that are the same on every machine and with every standard library.
#pragma once

#include <cstdint>

namespace rodwright::cutting {

// SplitMix64 (G. Steele, D. Lea, C. Flood, OOPSLA 2014).
class Random {
  public:
    explicit Random(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next() {
        std::uint64_t z = (state_ += 0x9e3779b97f4a7c15U);
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
        return z ^ (z >> 31U);
    }

    // Uniform in [0, bound); the bias of the multiplication is below bound / 2^32.
    int below(int bound) {
        return static_cast<int>(((next() >> 32U) * static_cast<std::uint64_t>(bound)) >> 32U);
    }

    bool one_in(int odds) { return below(odds) == 0; }

  private:
    std::uint64_t state_;
};

}  // namespace rodwright::cutting
