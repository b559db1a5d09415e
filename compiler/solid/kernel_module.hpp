// What the modules of the solid kernel and of the STEP writer export, and how the kernel's is opened.
#pragma once

#include <cstdint>
#include <string>

#include "compiler/solid/step_file.hpp"

namespace rodwright {

// Goes up with every change of SolidKernel, of StepModel or of what they see; a module built for another
// version is refused.
inline constexpr std::uint32_t solid_kernel_version = 4;

// Opens the module at `path` and asks it for its kernel, which lives until the process ends. Null with
// `error` saying why: no such file, not a solid kernel, or one of another version.
const SolidKernel* open_kernel_module(const std::string& path, std::string& error);

// Where load_solid_kernel() looks: `rodwright/rodwright_solid.so` beside the library this function is in.
std::string kernel_module_path();

}  // namespace rodwright

extern "C" {
using RodwrightSolidVersion = std::uint32_t (*)();
using RodwrightSolidKernel = const rodwright::SolidKernel* (*)();
using RodwrightStepBytes = bool (*)(const rodwright::StepModel&, std::string& bytes);
}
