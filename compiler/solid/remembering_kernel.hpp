// The solid kernel, with an answer to the same question kept: checks, sheets and views of one piece ask for
// the same meshes and lines over and over.
#pragma once

#include <memory>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

// `kernel` is kept by address. Solids that it is asked about have to stay for as long as it does, but for
// those that it cuts itself.
std::unique_ptr<const SolidKernel> remembering(const SolidKernel& kernel);

}  // namespace rodwright
