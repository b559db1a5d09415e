#include "compiler/plugin/load_backend.hpp"

#include <dlfcn.h>
#include <fmt/format.h>

#include <algorithm>
#include <exception>

#include "compiler/plugin/backend_table.hpp"
#include "compiler/solid/kernel_module.hpp"

namespace rodwright {
namespace {

namespace fs = std::filesystem;

using Backends = std::vector<std::unique_ptr<Backend>>;

Diagnostic refusal(const fs::path& path, const std::string& why) {
    return diagnose(Code::bad_plugin, {},
                    fmt::format("`{}` cannot be loaded as a backend: {}", path.string(), why));
}

template <typename Function>
Function find_function(void* module, const char* name) {
    return reinterpret_cast<Function>(dlsym(module, name));
}

// The functions of a module, or why it has not got them. It is never closed: what a backend hands out may
// point into it.
struct Module {
    RodwrightMakeBackend make = nullptr;
    std::string error;
};

Module open_module(const fs::path& path) {
    std::error_code error;
    if (!fs::exists(path, error)) return {nullptr, "there is no such file"};
    if (!fs::is_regular_file(path, error)) return {nullptr, "it is not a file"};
    // Absolute, since a name without a slash would be searched for in the system's folders.
    void* module = dlopen(fs::absolute(path).c_str(), RTLD_NOW | RTLD_LOCAL);
    if (module == nullptr) {
        const char* text = dlerror();
        return {nullptr, text == nullptr ? "unknown reason" : text};
    }
    const auto version = find_function<RodwrightInterfaceVersion>(module, "rodwright_interface_version");
    if (version == nullptr) return {nullptr, "it has no function `rodwright_interface_version`"};
    if (version() != backend_interface_version) {
        return {nullptr,
                fmt::format("it is built for version {} of the interface, this program has version {}",
                            version(), backend_interface_version)};
    }
    const auto make = find_function<RodwrightMakeBackend>(module, "rodwright_make_backend");
    if (make == nullptr) return {nullptr, "it has no function `rodwright_make_backend`"};
    return {make, ""};
}

bool is_word(const std::string& name) {
    return !name.empty() &&
           name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_-") == std::string::npos;
}

// A stranger's code: whatever it throws stays here.
std::unique_ptr<Backend> make_backend(const Module& module, std::string& error) {
    try {
        std::unique_ptr<Backend> backend(module.make());
        if (backend == nullptr) {
            error = "it makes no backend";
        } else if (!is_word(backend->name())) {
            error = "its backend has no name that could be written after `--only`";
        } else {
            return backend;
        }
    } catch (const std::exception& thrown) {
        error = fmt::format("making its backend fails: {}", thrown.what());
    } catch (...) {
        error = "making its backend fails";
    }
    return nullptr;
}

bool has_name(const Backends& backends, const std::string& name) {
    return std::ranges::any_of(backends, [&](const auto& backend) { return backend->name() == name; });
}

void add(Backends& backends, std::unique_ptr<Backend> backend, const fs::path& path,
         Diagnostics& diagnostics) {
    if (has_name(backends, backend->name())) {
        diagnostics.add(refusal(path, fmt::format("there is a backend `{}` already", backend->name()))
                            .hint("give the plugin's backend another name"));
        return;
    }
    backends.push_back(std::move(backend));
}

std::vector<fs::path> modules_in(const fs::path& folder) {
    std::vector<fs::path> modules;
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        if (at->path().extension() == ".so") modules.push_back(at->path());
    }
    std::ranges::sort(modules);
    return modules;
}

void add_from_folder(Backends& backends, const fs::path& folder, Diagnostics& diagnostics) {
    const Backends ours = linked_backends();
    for (const fs::path& path : modules_in(folder)) {
        if (has_name(ours, path.stem().string())) continue;
        Diagnostics found;
        std::unique_ptr<Backend> backend = load_backend(path, found);
        if (backend != nullptr) add(backends, std::move(backend), path, found);
        for (Diagnostic diagnostic : found.list()) {
            diagnostic.severity = Severity::warning;
            diagnostics.add(std::move(diagnostic));
        }
    }
}

}  // namespace

fs::path backend_folder() {
    return fs::path(kernel_module_path()).parent_path() / "backends";
}

std::unique_ptr<Backend> load_backend(const fs::path& path, Diagnostics& diagnostics) {
    const Module module = open_module(path);
    std::string error = module.error;
    std::unique_ptr<Backend> backend = error.empty() ? make_backend(module, error) : nullptr;
    if (backend == nullptr) diagnostics.add(refusal(path, error));
    return backend;
}

Backends all_backends(const std::vector<fs::path>& paths, const fs::path& folder, Diagnostics& diagnostics) {
    Backends backends = linked_backends();
    for (const fs::path& path : paths) {
        std::unique_ptr<Backend> backend = load_backend(path, diagnostics);
        if (backend == nullptr) continue;
        std::error_code error;
        const bool installed = fs::equivalent(path.parent_path(), folder, error);
        if (installed && has_name(backends, backend->name())) continue;
        add(backends, std::move(backend), path, diagnostics);
    }
    add_from_folder(backends, folder, diagnostics);
    return backends;
}

}  // namespace rodwright
