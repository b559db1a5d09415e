// A backend that does nothing, under any name.
#pragma once

#include "compiler/plugin/backend.hpp"

template <typename Names>
class QuietBackend : public rodwright::Backend {
  public:
    std::string name() const override { return Names::name; }
    std::string summary() const override { return "nothing"; }
    void emit(const rodwright::BackendInput&, const rodwright::OptionValues&, rodwright::OutputFolder& out,
              rodwright::Diagnostics&) const override {
        out.write("quiet.txt", "nothing\n");
    }
};
