#include <cstdlib>

#include "compiler/plugin/backend.hpp"

extern "C" std::uint32_t rodwright_interface_version() {
    return rodwright::backend_interface_version + 1;
}

// Never called: what it would make has another layout.
extern "C" rodwright::Backend* rodwright_make_backend() {
    std::abort();
}
