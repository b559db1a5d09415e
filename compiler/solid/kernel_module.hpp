// What the solid kernel's module exports, and how it is opened.
#pragma once

#include <cstdint>
#include <string>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

// Goes up with every change of SolidKernel or of what it sees; a module built for another version is refused.
inline constexpr std::uint32_t solid_kernel_version = 2;

// Opens the module at `path` and asks it for its kernel, which lives until the process ends. Null with
// `error` saying why: no such file, not a solid kernel, or one of another version.
const SolidKernel* open_kernel_module(const std::string& path, std::string& error);

// Where load_solid_kernel() looks: `rodwright/rodwright_solid.so` beside the library this function is in.
std::string kernel_module_path();

}  // namespace rodwright

extern "C" {
using RodwrightSolidVersion = std::uint32_t (*)();
using RodwrightSolidKernel = const rodwright::SolidKernel* (*)();
}
