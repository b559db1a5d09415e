// What the program's exit status means.
#pragma once

#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

enum class ExitStatus : int {
    clean = 0,          // warnings allowed
    design_errors = 1,  // also: `format --check` found a file to change
    wrong_command = 2,
    cannot_read_or_write = 3,  // a module that cannot be used, too
    defect = 70                // of rodwright (sysexits.h: EX_SOFTWARE)
};

// The lowest cause wins: what was asked, then the files, then the design.
ExitStatus exit_status(const Diagnostics& diagnostics);

}  // namespace rodwright
