#include "tests/modules/module.hpp"

struct Names {
    static constexpr const char* name = "quiet";
};

RODWRIGHT_BACKEND(QuietBackend<Names>);
