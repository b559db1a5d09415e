#include "backends/steps/steps_backend.hpp"

#include "backends/steps/writers.hpp"

namespace rodwright {

void StepsBackend::emit(const BackendInput& input, const OptionValues&, OutputFolder& out,
                        Diagnostics&) const {
    out.write("steps.md", steps_markdown(input.piece, *input.work));
    out.write("steps.json", steps_json(input.piece, *input.work));
}

std::unique_ptr<Backend> make_steps_backend() {
    return std::make_unique<StepsBackend>();
}

}  // namespace rodwright
