// The backend `boards`: which board gives which part, cut by cut.
#pragma once

#include <memory>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

class BoardsBackend : public Backend {
  public:
    std::string name() const override { return "boards"; }
    std::string summary() const override {
        return "which board gives which part, the cuts in their order, what to buy; needs a rack.yaml";
    }
    bool needs_wood_plan() const override { return true; }
    // Writes boards.txt, boards.json and buying.csv; nothing where there is no rack.
    void emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
              Diagnostics& diagnostics) const override;
};

std::unique_ptr<Backend> make_boards_backend();

}  // namespace rodwright
