// The backend `steps`: the order of work as Markdown with boxes to tick, and as JSON.
#pragma once

#include <memory>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

class StepsBackend : public Backend {
  public:
    std::string name() const override { return "steps"; }
    std::string summary() const override {
        return "the order of work with its reasons, set-ups and glue-ups, as Markdown and JSON";
    }
    bool needs_work_plan() const override { return true; }
    // Writes steps.md and steps.json.
    void emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
              Diagnostics& diagnostics) const override;
};

std::unique_ptr<Backend> make_steps_backend();

}  // namespace rodwright
