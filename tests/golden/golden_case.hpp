// One golden case: what to run, on which files, and what must come of it.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace rodwright::golden {

namespace fs = std::filesystem;

struct Case {
    std::string name;
    fs::path input;                     // a .rod file, or a folder with all that the case needs
    fs::path expected;                  // beside it: NAME.expected
    std::vector<std::string> commands;  // for the shell, one a line; `{}` is the .rod file
};

// The cases of one group folder, sorted by name. A folder NAME/ holds its own `cmd`; a file NAME.rod is run
// by the group's `cmd`. Throws std::runtime_error where a case is incomplete.
std::vector<Case> find_cases(const fs::path& group);

struct Environment {
    fs::path program;  // the rodwright to test
    std::string version;
    fs::path scratch;  // a folder that the case may fill; emptied first
};

// Runs the commands in a copy of the input. The text has the commands, what they printed, their exit status,
// and every file that they made or changed; what differs from machine to machine is replaced by a word in {}.
std::string run_case(const Case& each, const Environment& environment);

std::string read_file(const fs::path& path);
void write_file(const fs::path& path, const std::string& text);
std::vector<std::string> split_lines(const std::string& text);

}  // namespace rodwright::golden
