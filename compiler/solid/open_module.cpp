#include "compiler/solid/open_module.hpp"

#include <dlfcn.h>

#include "compiler/solid/kernel_module.hpp"

namespace rodwright {

// The string dlerror() returns changes with the next call.
static std::string last_error() {
    const char* text = dlerror();
    return text == nullptr ? "unknown reason" : text;
}

std::string module_path(const ModuleSpec& spec) {
    Dl_info info{};
    const void* own = reinterpret_cast<const void*>(&module_path);
    std::string file = dladdr(own, &info) != 0 && info.dli_fname != nullptr ? info.dli_fname : "";
    const std::size_t slash = file.rfind('/');
    file.erase(slash == std::string::npos ? 0 : slash + 1);
    return file + "rodwright/" + spec.name + ".so";
}

void* module_function(const ModuleSpec& spec, const std::string& path, std::string& error) {
    void* module = dlopen(path.c_str(), RTLD_NOW | RTLD_LOCAL);
    if (module == nullptr) {
        error = last_error();
        return nullptr;
    }
    const auto version =
        reinterpret_cast<RodwrightSolidVersion>(dlsym(module, (spec.name + "_version").c_str()));
    void* function = dlsym(module, spec.function.c_str());
    if (version == nullptr || function == nullptr) {
        error = path + " is not " + spec.what;
        return nullptr;
    }
    if (version() != solid_kernel_version) {
        error = path + " is for version " + std::to_string(version()) + " of the solid interface, not " +
                std::to_string(solid_kernel_version);
        return nullptr;
    }
    return function;
}

}  // namespace rodwright
