#include "tests/modules/module.hpp"

struct Names {
    static constexpr const char* name = "Two Words";
};

RODWRIGHT_BACKEND(QuietBackend<Names>);
