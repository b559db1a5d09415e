#include <dlfcn.h>

#include "compiler/solid/kernel_module.hpp"

namespace rodwright {

// The string dlerror() returns changes with the next call.
static std::string last_error() {
    const char* text = dlerror();
    return text == nullptr ? "unknown reason" : text;
}

template <typename Function>
static Function find_function(void* module, const char* name) {
    return reinterpret_cast<Function>(dlsym(module, name));
}

std::string kernel_module_path() {
    Dl_info info{};
    const void* own = reinterpret_cast<const void*>(&kernel_module_path);
    std::string file = dladdr(own, &info) != 0 && info.dli_fname != nullptr ? info.dli_fname : "";
    const std::size_t slash = file.rfind('/');
    file.erase(slash == std::string::npos ? 0 : slash + 1);
    return file + "rodwright/rodwright_solid.so";
}

// A module is never closed: its code is behind every solid it made.
const SolidKernel* open_kernel_module(const std::string& path, std::string& error) {
    void* module = dlopen(path.c_str(), RTLD_NOW | RTLD_LOCAL);
    if (module == nullptr) {
        error = last_error();
        return nullptr;
    }
    const auto version = find_function<RodwrightSolidVersion>(module, "rodwright_solid_version");
    const auto kernel = find_function<RodwrightSolidKernel>(module, "rodwright_solid_kernel");
    if (version == nullptr || kernel == nullptr) {
        error = path + " is not a solid kernel";
        return nullptr;
    }
    if (version() != solid_kernel_version) {
        error = path + " is for version " + std::to_string(version()) + " of the solid interface, not " +
                std::to_string(solid_kernel_version);
        return nullptr;
    }
    return kernel();
}

const SolidKernel* load_solid_kernel(std::string& error) {
    static std::string kept_error;
    static const SolidKernel* const kernel = open_kernel_module(kernel_module_path(), kept_error);
    if (kernel == nullptr) error = kept_error;
    return kernel;
}

}  // namespace rodwright
