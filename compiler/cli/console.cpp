#include "compiler/cli/console.hpp"

#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <string>

#include "compiler/diagnostics/render.hpp"

namespace rodwright {

static void write_to(std::FILE* stream, std::string_view text) {
    std::fwrite(text.data(), 1, text.size(), stream);
}

// An empty NO_COLOR counts as not set (no-color.org).
bool Console::colour() const {
    const char* no_colour = std::getenv("NO_COLOR");
    const bool refused = options_.no_colour || (no_colour != nullptr && *no_colour != '\0');
    return !refused && ::isatty(STDERR_FILENO) == 1;
}

void Console::print(std::string_view text) const {
    write_to(stdout, text);
}

ExitStatus Console::report(const Diagnostics& diagnostics, const SourceManager& sources) const {
    const bool json = options_.form == "json";
    std::string text;
    for (const Diagnostic& each : diagnostics.sorted()) {
        text += json ? render_json(each, sources) : render(each, sources, colour()) + '\n';
    }
    if (!json && !text.empty()) text += summary(diagnostics) + '\n';
    std::fflush(stdout);
    write_to(stderr, text);
    return exit_status(diagnostics);
}

ExitStatus Console::report(Diagnostic diagnostic) const {
    Diagnostics diagnostics;
    diagnostics.add(std::move(diagnostic));
    const SourceManager none;
    write_to(stderr, options_.form == "json" ? render_json(diagnostics.list().front(), none)
                                             : render(diagnostics.list().front(), none, colour()));
    return exit_status(diagnostics);
}

bool flush_output() {
    return std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
}

}  // namespace rodwright
