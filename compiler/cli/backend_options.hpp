// The options of backends on the command line. Backends give them as data; this is the only place that knows
// how they are written and checked.
#pragma once

#include <CLI/App.hpp>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

using Backends = std::vector<std::unique_ptr<Backend>>;

class BackendOptions {
  public:
    // Adds the options of every backend; one that several have is written once and means all of them.
    void add_to(CLI::App& command, const Backends& backends);
    // Every option of `backend`: as given, or by default. A flag is "yes" or "no". Empty, with
    // Code::bad_command reported, if a value does not fit.
    std::optional<OptionValues> values_for(const Backend& backend, Diagnostics& diagnostics) const;

  private:
    void add(CLI::App& command, const OptionSpec& spec);

    // The command line writes into these; nodes of a map stay where they are.
    std::map<std::string, std::optional<std::string>> given_;
    std::map<std::string, bool> flags_;
};

}  // namespace rodwright
