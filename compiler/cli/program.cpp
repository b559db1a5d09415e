#include "compiler/cli/program.hpp"

#include <fmt/format.h>

#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <exception>

#include "compiler/cli/command.hpp"

namespace rodwright {

namespace {

void add_message_options(CLI::App& program, MessageOptions& messages) {
    program
        .add_option("--messages", messages.form,
                    "How messages are written: text, or json (one object a line)")
        ->check(one_of({"text", "json"}))
        ->type_name("text|json")
        ->group("Messages");
    program.add_flag("--no-colour,--no-color", messages.no_colour, "No colour, even on a terminal")
        ->group("Messages");
}

void describe(CLI::App& program) {
    program.description(
        "rodwright builds furniture on paper: from a .rod file to cut list, steps and drawings.");
    program.get_formatter()->label("SUBCOMMAND", "COMMAND");
    program.get_formatter()->label("Positionals", "Takes");
    program.get_formatter()->label("REQUIRED", "(needed)");
    program.get_formatter()->label("TEXT", "WORD");
    program.set_help_flag("--help,-h", "Print this and exit");
    program.set_version_flag("--version", "rodwright " RODWRIGHT_VERSION, "Print the version and exit");
    program.require_subcommand(1);
    program.option_defaults()->always_capture_default(false);
}

std::vector<std::string> command_names(const CLI::App& program) {
    std::vector<std::string> names;
    for (const CLI::App* each : program.get_subcommands([](const CLI::App*) { return true; })) {
        names.push_back(each->get_name());
    }
    return names;
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "`" : ", `") + name + "`";
    return text;
}

const CLI::App* chosen_command(const CLI::App& program) {
    const auto chosen = program.get_subcommands();
    return chosen.empty() ? nullptr : chosen.front();
}

std::vector<std::string> option_names(const CLI::App& program, const CLI::App& command) {
    std::vector<std::string> names;
    for (const CLI::App* app : {&program, &command}) {
        for (const CLI::Option* option : app->get_options()) {
            for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
        }
    }
    return names;
}

Diagnostic unknown_command(const CLI::App& program, const std::string& word) {
    const auto names = command_names(program);
    if (word.starts_with('-')) {
        return diagnose(Code::bad_command, {}, fmt::format("there is no option `{}`", word))
            .hint("`rodwright --help` lists the options");
    }
    const std::string near = nearest_name(word, names);
    return diagnose(Code::bad_command, {}, fmt::format("there is no command `{}`", word))
        .hint(near.empty() ? "the commands are " + joined(names) : fmt::format("`{}` is the nearest", near));
}

Diagnostic unknown_word(const CLI::App& program, const CLI::App& command, const std::string& word) {
    const std::string name = command.get_name();
    if (!word.starts_with('-')) {
        return diagnose(Code::bad_command, {}, fmt::format("`{}` is one word too many for `{}`", word, name))
            .hint(fmt::format("`rodwright {} --help` says what it takes", name));
    }
    const std::string option = word.substr(0, word.find('='));
    const std::string near = nearest_name(option, option_names(program, command));
    return diagnose(Code::bad_command, {}, fmt::format("`{}` has no option `{}`", name, option))
        .hint(near.empty() ? fmt::format("`rodwright {} --help` lists its options", name)
                           : fmt::format("`{}` is the nearest", near));
}

std::string begin_lower(std::string text) {
    const bool is_sentence = text.size() > 1 && text[1] >= 'a' && text[1] <= 'z';
    if (is_sentence && text[0] >= 'A' && text[0] <= 'Z') text[0] = static_cast<char>(text[0] - 'A' + 'a');
    if (!text.empty() && text.back() == '.') text.pop_back();
    return text;
}

Diagnostic what_is_wrong(const CLI::App& program, const CLI::ParseError& error) {
    const CLI::App* command = chosen_command(program);
    const auto left_over = program.remaining(true);
    if (command == nullptr && !left_over.empty()) return unknown_command(program, left_over.front());
    if (command == nullptr) {
        return diagnose(Code::bad_command, {}, "there is no command on the command line")
            .hint("the commands are " + joined(command_names(program)));
    }
    if (!left_over.empty()) return unknown_word(program, *command, left_over.front());
    return diagnose(Code::bad_command, {}, begin_lower(error.what()))
        .hint(fmt::format("`rodwright {} --help` says what it takes", command->get_name()));
}

ExitStatus understand_and_run(CLI::App& program, Session& session, int argc, const char* const* argv) {
    try {
        program.parse(argc, argv);
    } catch (const CLI::Success& asked) {
        program.exit(asked);
        return ExitStatus::clean;
    } catch (const CLI::ParseError& error) {
        return session.console.report(what_is_wrong(program, error));
    }
    return session.run();
}

ExitStatus run_session(int argc, const char* const* argv) {
    CLI::App program;
    program.name("rodwright");
    Session session;
    session.words.assign(argv + 1, argv + argc);
    describe(program);
    add_message_options(program, session.messages);
    add_build(program, session);
    add_check(program, session);
    add_format(program, session);
    add_list(program, session);
    add_rack(program, session);
    add_explain(program, session);
    // Said last, or the commands would take it over.
    program.footer(
        "`rodwright COMMAND --help` says more. Exit status: 0 clean, 1 errors in the design,\n"
        "2 wrong command line, 3 a file cannot be read or written, 70 a defect of rodwright.");
    const ExitStatus status = understand_and_run(program, session, argc, argv);
    if (flush_output()) return status;
    return session.console.report(
        diagnose(Code::cannot_write, {}, "standard output did not take all that was printed"));
}

int report_defect(const char* what) {
    fmt::print(stderr,
               "rodwright: a defect of rodwright, not of your design: {}\n"
               "Please report it, with the file and the command that led here.\n",
               what);
    return static_cast<int>(ExitStatus::defect);
}

}  // namespace

CLI::Validator one_of(std::vector<std::string> words) {
    const auto refuse = [words](const std::string& word) {
        if (std::find(words.begin(), words.end(), word) != words.end()) return std::string();
        return fmt::format("`{}` is none of {}", word, joined(words));
    };
    return CLI::Validator(refuse, "");
}

CLI::App* add_command(CLI::App& program, const std::string& name, const std::string& what_it_does) {
    return program.add_subcommand(name, what_it_does)->fallthrough()->group("Commands");
}

int run_program(int argc, const char* const* argv) {
    try {
        return static_cast<int>(run_session(argc, argv));
    } catch (const std::exception& unexpected) {
        return report_defect(unexpected.what());
    } catch (...) {
        return report_defect("an exception of unknown type");
    }
}

}  // namespace rodwright
