#include "tests/golden/golden_case.hpp"

#include <sys/wait.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>
#include <stdexcept>

#include "compiler/diagnostics/utf8.hpp"

namespace rodwright::golden {

namespace {

std::string replace_all(std::string text, const std::string& from, const std::string& to) {
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size()) {
        text.replace(at, from.size(), to);
    }
    return text;
}

std::vector<std::string> read_commands(const fs::path& path, const std::string& file) {
    std::vector<std::string> commands;
    for (const std::string& line : split_lines(read_file(path))) {
        if (!line.empty()) commands.push_back(replace_all(line, "{}", file));
    }
    if (commands.empty()) throw std::runtime_error(path.string() + " has no command");
    return commands;
}

// Absolute, with no quotation mark that the shell would see as the end of the word.
std::string shell_word(const fs::path& path) {
    return "'" + replace_all(fs::absolute(path).string(), "'", "'\\''") + "'";
}

std::map<std::string, std::string> files_in(const fs::path& folder) {
    std::map<std::string, std::string> files;
    for (const auto& each : fs::recursive_directory_iterator(folder)) {
        if (each.is_regular_file())
            files[fs::relative(each.path(), folder).string()] = read_file(each.path());
    }
    return files;
}

std::string section(const std::string& heading, const std::string& text) {
    if (text.empty()) return {};
    const bool is_text = !first_bad_utf8(text) && text.find('\0') == std::string::npos;
    if (!is_text) return "--- " + heading + " (not text)\n";
    return "--- " + heading + "\n" + text + (text.back() == '\n' ? "" : "\n(no line end)\n");
}

std::string run_command(const std::string& command, const fs::path& work, const Environment& environment) {
    const fs::path out = environment.scratch / "stdout";
    const fs::path err = environment.scratch / "stderr";
    const std::string line = "cd " + shell_word(work) +
                             " && PATH=" + shell_word(environment.program.parent_path()) +
                             ":$PATH && export PATH && { " + command + "\n} >" + shell_word(out) + " 2>" +
                             shell_word(err) + " </dev/null";
    const int status = std::system(line.c_str());
    const int code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    return "$ " + command + "\n" + section("stdout", read_file(out)) + section("stderr", read_file(err)) +
           "--- exit " + std::to_string(code) + "\n";
}

std::string changed_files(const std::map<std::string, std::string>& before,
                          const std::map<std::string, std::string>& after) {
    std::string text;
    for (const auto& [name, bytes] : before) {
        if (!after.contains(name)) text += "--- removed " + name + "\n";
    }
    for (const auto& [name, bytes] : after) {
        const auto old = before.find(name);
        if (old == before.end() || old->second != bytes) text += section("file " + name, bytes);
    }
    return text;
}

}  // namespace

std::string read_file(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) throw std::runtime_error("cannot read " + path.string());
    return {std::istreambuf_iterator<char>(file), {}};
}

void write_file(const fs::path& path, const std::string& text) {
    fs::create_directories(path.parent_path());
    std::ofstream file(path, std::ios::binary);
    if (!(file << text).flush()) throw std::runtime_error("cannot write " + path.string());
}

std::vector<std::string> split_lines(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

std::vector<Case> find_cases(const fs::path& group) {
    std::vector<Case> cases;
    for (const auto& entry : fs::directory_iterator(group)) {
        const fs::path& path = entry.path();
        if (!entry.is_directory() && path.extension() != ".rod") continue;
        const std::string name = path.stem().string();
        const fs::path commands = entry.is_directory() ? path / "cmd" : group / "cmd";
        cases.push_back(
            {name, path, group / (name + ".expected"), read_commands(commands, path.filename().string())});
    }
    std::sort(cases.begin(), cases.end(), [](const Case& a, const Case& b) { return a.name < b.name; });
    return cases;
}

std::string run_case(const Case& each, const Environment& environment) {
    const fs::path work = environment.scratch / "work";
    fs::remove_all(environment.scratch);
    fs::create_directories(work);
    const fs::path target = fs::is_directory(each.input) ? work : work / each.input.filename();
    fs::copy(each.input, target, fs::copy_options::recursive);
    fs::remove(work / "cmd");
    const auto before = files_in(work);
    std::string text;
    for (const std::string& command : each.commands) text += run_command(command, work, environment);
    text += changed_files(before, files_in(work));
    text = replace_all(text, fs::absolute(work).string(), "{here}");
    return replace_all(text, "rodwright " + environment.version, "rodwright {version}");
}

}  // namespace rodwright::golden
