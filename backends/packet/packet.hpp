// The drawn packet: what a maker carries to the bench, as one PDF.
#pragma once

#include <memory>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

class PacketBackend : public Backend {
  public:
    std::string name() const override { return "packet"; }
    std::string summary() const override;
    std::vector<OptionSpec> options() const override;
    bool needs_solids() const override { return true; }
    bool needs_wood_plan() const override { return true; }
    bool needs_work_plan() const override { return true; }
    bool needs_findings() const override { return true; }
    // Writes packet.pdf: cover, general arrangement, a sheet for every kind of part, joint sheets, templates
    // at full size, cut list, order of work, what the checks worked out; and each template uncut as
    // templates/NAME.svg.
    void emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
              Diagnostics& diagnostics) const override;
};

std::unique_ptr<Backend> make_packet_backend();

}  // namespace rodwright
