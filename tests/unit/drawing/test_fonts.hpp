// The fonts of sheets, loaded once.
#pragma once

#include <doctest/doctest.h>

#include "backends/drawing/fonts.hpp"

namespace rodwright::drawing {

inline const Fonts& fonts() {
    static Diagnostics diagnostics;
    static const std::optional<Fonts> loaded = Fonts::load(diagnostics);
    REQUIRE(loaded.has_value());
    return *loaded;
}

}  // namespace rodwright::drawing
