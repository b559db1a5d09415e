#include "tests/modules/module.hpp"

struct Names {
    static constexpr const char* name = "cutlist";
};

RODWRIGHT_BACKEND(QuietBackend<Names>);
