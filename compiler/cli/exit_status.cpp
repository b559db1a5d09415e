#include "compiler/cli/exit_status.hpp"

#include <algorithm>
#include <initializer_list>

namespace rodwright {

static bool has_error(const Diagnostics& diagnostics, std::initializer_list<Code> codes) {
    return std::any_of(diagnostics.list().begin(), diagnostics.list().end(), [&](const Diagnostic& each) {
        return each.severity == Severity::error &&
               std::find(codes.begin(), codes.end(), each.code) != codes.end();
    });
}

ExitStatus exit_status(const Diagnostics& diagnostics) {
    if (diagnostics.ok()) return ExitStatus::clean;
    if (has_error(diagnostics, {Code::bad_command})) return ExitStatus::wrong_command;
    if (has_error(diagnostics, {Code::cannot_read, Code::cannot_write, Code::bad_plugin}))
        return ExitStatus::cannot_read_or_write;
    return ExitStatus::design_errors;
}

}  // namespace rodwright
