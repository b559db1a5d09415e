#include "compiler/cli/backend_options.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {

namespace {

std::string joined(const std::vector<std::string>& words, std::string_view between) {
    return fmt::format("{}", fmt::join(words, between));
}

bool is_whole_number(const std::string& text) {
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    return !text.empty() && text.size() <= 9 && std::all_of(text.begin(), text.end(), is_digit);
}

bool fits(const OptionSpec& spec, const std::string& value) {
    if (spec.type == OptionType::whole_number) return is_whole_number(value);
    return spec.choices.empty() ||
           std::find(spec.choices.begin(), spec.choices.end(), value) != spec.choices.end();
}

Diagnostic does_not_fit(const OptionSpec& spec, const std::string& value) {
    const std::string what = spec.type == OptionType::whole_number ? "a whole number of at most nine digits"
                                                                   : "one of " + joined(spec.choices, ", ");
    return diagnose(Code::bad_command, {},
                    fmt::format("`{}` is nothing that `--{}` can be", value, spec.name))
        .hint("it takes " + what);
}

std::string type_name(const OptionSpec& spec) {
    if (spec.type == OptionType::whole_number) return "NUMBER";
    return spec.choices.empty() ? "WORD" : joined(spec.choices, "|");
}

}  // namespace

void BackendOptions::add_to(CLI::App& command, const Backends& backends) {
    for (const auto& backend : backends) {
        for (const OptionSpec& spec : backend->options()) add(command, spec);
    }
}

void BackendOptions::add(CLI::App& command, const OptionSpec& spec) {
    if (given_.contains(spec.name) || flags_.contains(spec.name)) return;
    if (spec.type == OptionType::flag) {
        command.add_flag("--" + spec.name, flags_[spec.name], spec.help)->group("Output");
        return;
    }
    command
        .add_option(
            "--" + spec.name, given_[spec.name],
            spec.default_value.empty() ? spec.help : fmt::format("{} ({})", spec.help, spec.default_value))
        ->type_name(type_name(spec))
        ->group("Output");
}

std::optional<OptionValues> BackendOptions::values_for(const Backend& backend,
                                                       Diagnostics& diagnostics) const {
    OptionValues values;
    bool all_fit = true;
    for (const OptionSpec& spec : backend.options()) {
        if (spec.type == OptionType::flag) {
            values[spec.name] = flags_.at(spec.name) ? "yes" : "no";
            continue;
        }
        const std::string value = given_.at(spec.name).value_or(spec.default_value);
        values[spec.name] = value;
        if (fits(spec, value)) continue;
        diagnostics.add(does_not_fit(spec, value));
        all_fit = false;
    }
    return all_fit ? std::optional(std::move(values)) : std::nullopt;
}

}  // namespace rodwright
