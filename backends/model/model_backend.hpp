// The backend `model`: the piece in three dimensions, as a STEP file for other programs.
#pragma once

#include <memory>

#include "compiler/plugin/backend.hpp"
#include "compiler/solid/step_file.hpp"

namespace rodwright {

// One shape for each kind that can be built, an assembly for each of the piece's and one for the piece
// itself, and each part in its place: "A1 leg (left front)".
StepModel step_model(const Piece& piece, SolidStore& solids);

class ModelBackend : public Backend {
  public:
    std::string name() const override { return "model"; }
    std::string summary() const override { return "parts in their places as solids, as a STEP file"; }
    bool needs_solids() const override { return true; }
    // Writes piece.step.
    void emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
              Diagnostics& diagnostics) const override;
};

std::unique_ptr<Backend> make_model_backend();

}  // namespace rodwright
