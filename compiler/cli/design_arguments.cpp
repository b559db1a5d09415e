#include "compiler/cli/design_arguments.hpp"

#include <fmt/format.h>

#include "compiler/cli/progress.hpp"

namespace rodwright {

void add_design_arguments(CLI::App& command, DesignArguments& options) {
    command.add_option("FILE", options.file, "The design, a .rod file")->required()->type_name("");
    command
        .add_option("--set", options.set,
                    "Give a parameter another value: --set 'length=48\"'; may be repeated")
        ->type_name("NAME=VALUE")
        ->allow_extra_args(false);
    command.add_option("--variant", options.variant, "Build a variant that the design describes")
        ->type_name("NAME");
    add_stdlib_option(command, options.stdlib_folder);
}

void add_stdlib_option(CLI::App& command, std::string& folder) {
    command.add_option("--stdlib", folder, "Use the library in this folder, while working on it")
        ->type_name("FOLDER");
}

std::optional<Settings> read_settings(const std::vector<std::string>& written, Diagnostics& diagnostics) {
    Settings settings;
    for (const std::string& each : written) {
        const std::size_t equals = each.find('=');
        if (equals != std::string::npos && equals > 0 && equals + 1 < each.size()) {
            settings.emplace_back(each.substr(0, equals), each.substr(equals + 1));
            continue;
        }
        diagnostics.add(diagnose(Code::bad_command, {}, fmt::format("`--set {}` does not set anything", each))
                            .hint("write a name, `=` and a value: --set 'length=48\"'"));
    }
    return diagnostics.ok() ? std::optional(std::move(settings)) : std::nullopt;
}

std::optional<std::string> if_given(const std::string& word) {
    return word.empty() ? std::nullopt : std::optional(word);
}

std::optional<Compilation> compile_design(const DesignArguments& arguments, Diagnostics& diagnostics) {
    const auto settings = read_settings(arguments.set, diagnostics);
    if (!settings) return std::nullopt;
    const Progress progress("reading " + arguments.file);
    return compile(DiskWorld(), {arguments.file, *settings, if_given(arguments.variant),
                                 if_given(arguments.stdlib_folder)});
}

}  // namespace rodwright
