#include "backends/model/model_backend.hpp"

#include <fmt/chrono.h>

#include "backends/epoch.hpp"

namespace rodwright {

// Files without a date of their own are from the beginning of the epoch, as in archives made to be
// reproducible.
static std::string time_stamp(const BackendInput& input) {
    return fmt::format("{:%Y-%m-%dT%H:%M:%S}Z",
                       source_date(input.environment).value_or(std::chrono::sys_seconds{}));
}

static void report(const StepFile& file, Diagnostics& diagnostics) {
    if (!file.load_error.empty()) {
        diagnostics.add(
            diagnose(Code::no_solid_kernel, {}, "the STEP writer cannot be loaded: " + file.load_error)
                .hint("install rodwright again; all but `model` can be made without it"));
    } else if (!file.bytes) {
        diagnostics.add(diagnose(Code::solid_failed, {}, "the solids cannot be written as a STEP file")
                            .hint("make the rest: `--only packet,cutlist,steps,graph`"));
    }
}

void ModelBackend::emit(const BackendInput& input, const OptionValues&, OutputFolder& out,
                        Diagnostics& diagnostics) const {
    if (input.solids.kernel() == nullptr) return;
    StepModel model = step_model(input.piece, input.solids);
    if (model.parts.empty()) {
        diagnostics.add(diagnose(Code::solid_failed, {}, "no part of the piece has a shape for a model"));
        return;
    }
    model.time = time_stamp(input);
    StepFile file = step_file(model);
    report(file, diagnostics);
    if (file.bytes) out.write("piece.step", std::move(*file.bytes));
}

std::unique_ptr<Backend> make_model_backend() {
    return std::make_unique<ModelBackend>();
}

}  // namespace rodwright
