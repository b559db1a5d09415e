#include "backends/steps/steps_backend.hpp"

#include "backends/steps/writers.hpp"

namespace rodwright {

void StepsBackend::emit(const BackendInput& input, const OptionValues&, OutputFolder& out,
                        Diagnostics& diagnostics) const {
    const std::optional<StepList> list = make_steps(input.piece, diagnostics);
    if (!list) return;
    out.write("steps.md", steps_markdown(*list));
    out.write("steps.json", steps_json(*list));
}

std::unique_ptr<Backend> make_steps_backend() {
    return std::make_unique<StepsBackend>();
}

}  // namespace rodwright
