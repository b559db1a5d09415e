#include "compiler/solid/kernel_module.hpp"
#include "compiler/solid/open_module.hpp"

namespace rodwright {

static const ModuleSpec kernel_spec{"rodwright_solid", "rodwright_solid_kernel", "a solid kernel"};
static const ModuleSpec step_spec{"rodwright_step", "rodwright_step_bytes", "a STEP writer"};

std::string kernel_module_path() {
    return module_path(kernel_spec);
}

const SolidKernel* open_kernel_module(const std::string& path, std::string& error) {
    void* function = module_function(kernel_spec, path, error);
    return function == nullptr ? nullptr : reinterpret_cast<RodwrightSolidKernel>(function)();
}

const SolidKernel* load_solid_kernel(std::string& error) {
    static std::string kept_error;
    static const SolidKernel* const kernel = open_kernel_module(kernel_module_path(), kept_error);
    if (kernel == nullptr) error = kept_error;
    return kernel;
}

StepFile step_file(const StepModel& model) {
    StepFile file;
    void* function = module_function(step_spec, module_path(step_spec), file.load_error);
    if (function == nullptr) return file;
    std::string bytes;
    if (reinterpret_cast<RodwrightStepBytes>(function)(model, bytes)) file.bytes = std::move(bytes);
    return file;
}

}  // namespace rodwright
