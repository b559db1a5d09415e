#include <fmt/format.h>

#include <memory>
#include <stdexcept>

#include "compiler/cli/command.hpp"
#include "compiler/plugin/output_folder.hpp"
#include "compiler/world.hpp"
#include "grammar/parse.hpp"
#include "grammar/print.hpp"

namespace rodwright {

namespace {

struct FormatOptions {
    std::vector<std::string> files;
    bool check = false;
};

// A file is rewritten only with text that reads as well as the old one did.
void require_readable(const std::string& path, const std::string& text) {
    SourceManager sources;
    Diagnostics diagnostics;
    const Tree tree = parse(sources, sources.add(path, text), diagnostics);
    if (!diagnostics.ok() || print(tree) != text) {
        throw std::logic_error(fmt::format("the formatted text of `{}` does not read as it should", path));
    }
}

// The canonical text of a file; empty where it cannot be had, with the reason in `diagnostics`.
std::optional<std::string> formatted(SourceManager& sources, const std::string& path, std::string text,
                                     Diagnostics& diagnostics) {
    const std::size_t errors_before = diagnostics.errors();
    const Tree tree = parse(sources, sources.add(path, std::move(text)), diagnostics);
    if (diagnostics.errors() != errors_before) return std::nullopt;
    return print(tree);
}

// True if the file is, or was, not in its canonical form.
bool format_file(const std::string& path, bool check, SourceManager& sources, Diagnostics& diagnostics) {
    ReadResult read = DiskWorld().read(path);
    if (!read.text) {
        diagnostics.add(
            diagnose(Code::cannot_read, {}, fmt::format("cannot read `{}`: {}", path, read.error)));
        return false;
    }
    const auto text = formatted(sources, path, *read.text, diagnostics);
    if (!text || *text == *read.text) return false;
    require_readable(path, *text);
    if (!check) replace_file(path, *text, diagnostics);
    return true;
}

ExitStatus format_files(const Console& console, const FormatOptions& options) {
    SourceManager sources;
    Diagnostics diagnostics;
    bool changes = false;
    for (const std::string& path : options.files) {
        if (!format_file(path, options.check, sources, diagnostics)) continue;
        changes = true;
        if (options.check) console.print(path + '\n');
    }
    const ExitStatus status = console.report(diagnostics, sources);
    return status == ExitStatus::clean && options.check && changes ? ExitStatus::design_errors : status;
}

}  // namespace

void add_format(CLI::App& program, Session& session) {
    CLI::App* command = add_command(program, "format", "Rewrite .rod files in the one canonical layout");
    auto options = std::make_shared<FormatOptions>();
    command->add_option("FILE", options->files, "Files to rewrite; one with errors is left as it is")
        ->required()
        ->type_name("");
    command->add_flag("--check", options->check,
                      "Change nothing; list the files that would change, and exit 1");
    command->callback([&session, options] {
        session.run = [&session, options] { return format_files(session.console, *options); };
    });
}

}  // namespace rodwright
