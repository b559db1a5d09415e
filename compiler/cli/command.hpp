// The commands of the program. Each adds its words to the command line; what is to run is decided when the
// whole line has been understood.
#pragma once

#include <CLI/App.hpp>
#include <functional>
#include <string>
#include <vector>

#include "compiler/cli/console.hpp"

namespace rodwright {

struct Session {
    std::vector<std::string> words;  // the command line, for what must be known before it is read
    MessageOptions messages;
    Console console{messages};
    std::function<ExitStatus()> run;
};

void add_build(CLI::App& program, Session& session);
void add_check(CLI::App& program, Session& session);
void add_format(CLI::App& program, Session& session);
void add_list(CLI::App& program, Session& session);
void add_rack(CLI::App& program, Session& session);
void add_explain(CLI::App& program, Session& session);

// A command that takes the options of the program after its own name too.
CLI::App* add_command(CLI::App& program, const std::string& name, const std::string& what_it_does);

// Refuses an option's value that is none of `words`.
CLI::Validator one_of(std::vector<std::string> words);

}  // namespace rodwright
