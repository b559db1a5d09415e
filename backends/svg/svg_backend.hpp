// The views of the packet each as an SVG, for pages and reviews of a design.
#pragma once

#include <memory>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

class SvgBackend : public Backend {
  public:
    std::string name() const override { return "svg"; }
    std::string summary() const override;
    std::vector<OptionSpec> options() const override;
    bool needs_solids() const override { return true; }
    // Writes views/pictorial.svg, views/taken-apart.svg where there are joints, views/arrangement.svg and
    // views/part-LETTER.svg for every kind of part but mirror images.
    void emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
              Diagnostics& diagnostics) const override;
};

std::unique_ptr<Backend> make_svg_backend();

}  // namespace rodwright
