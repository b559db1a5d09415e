#include "compiler/plugin/backend.hpp"

extern "C" std::uint32_t rodwright_interface_version() {
    return rodwright::backend_interface_version;
}
