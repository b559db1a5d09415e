// The program's two mouths: results on standard output, messages on standard error.
#pragma once

#include <string_view>

#include "compiler/cli/exit_status.hpp"
#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

struct MessageOptions {
    std::string form = "text";  // or "json"
    bool no_colour = false;
};

class Console {
  public:
    explicit Console(const MessageOptions& options) : options_(options) {}

    void print(std::string_view text) const;
    // Every diagnostic, then how many there were. Returns the exit status that they ask for.
    ExitStatus report(const Diagnostics& diagnostics, const SourceManager& sources) const;
    // For a command that ends here: one error without a place.
    ExitStatus report(Diagnostic diagnostic) const;

  private:
    bool colour() const;

    const MessageOptions& options_;  // filled in while the command line is read
};

// Whether all that was printed has been taken; a full disk shows only here.
bool flush_output();

}  // namespace rodwright
