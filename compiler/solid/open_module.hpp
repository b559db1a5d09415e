// Opening the modules that stand beside rodwright's library. Internal to compiler/solid.
#pragma once

#include <string>

namespace rodwright {

struct ModuleSpec {
    std::string name;      // "rodwright_solid"; exports its version as `rodwright_solid_version`
    std::string function;  // "rodwright_solid_kernel": what it is for
    std::string what;      // "a solid kernel"
};

// `rodwright/NAME.so` in the folder of the library this function is in.
std::string module_path(const ModuleSpec& spec);

// The function of the module at `path`, which is never closed: its code is behind everything it made. Null
// with `error` saying why: no such file, another kind of module, or one for another solid_kernel_version.
void* module_function(const ModuleSpec& spec, const std::string& path, std::string& error);

}  // namespace rodwright
