// The backend `cutlist`: the cut list and the hardware list as text, CSV, Markdown and JSON.
#pragma once

#include <memory>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

class CutListBackend : public Backend {
  public:
    std::string name() const override { return "cutlist"; }
    std::string summary() const override { return "what to cut and buy, as text, CSV, Markdown and JSON"; }
    bool needs_wood_plan() const override { return true; }
    // Writes cutlist.txt, cutlist.csv, hardware.csv, cutlist.md and cutlist.json.
    void emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
              Diagnostics& diagnostics) const override;
};

std::unique_ptr<Backend> make_cutlist_backend();

}  // namespace rodwright
