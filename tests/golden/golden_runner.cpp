// golden_runner GROUP [--update NAME...]   runs the cases of one group folder
// golden_runner --coverage                 checks that every diagnostic code is in some case
//
// A case that differs prints the difference, leaves what came of it in the build folder, and says how to make
// it the expected text.
#include <iostream>
#include <set>
#include <stdexcept>

#include "tests/golden/code_coverage.hpp"
#include "tests/golden/golden_case.hpp"
#include "tests/golden/golden_diff.hpp"

using namespace rodwright::golden;

namespace {

const fs::path root = RODWRIGHT_SOURCE_DIR "/tests/golden";
const fs::path results = RODWRIGHT_BINARY_DIR "/golden";

int check_coverage() {
    const auto faults = code_coverage_faults(root);
    for (const std::string& fault : faults) std::cout << fault << '\n';
    return faults.empty() ? 0 : 1;
}

bool passes(const Case& each, const std::string& group, const std::string& actual) {
    const std::string expected = fs::exists(each.expected) ? read_file(each.expected) : "";
    const std::string changed = difference(expected, actual);
    if (changed.empty()) return true;
    const fs::path kept = results / group / (each.name + ".actual");
    write_file(kept, actual);
    std::cout << "FAILED " << group << '/' << each.name << '\n'
              << changed << "all of it: " << kept.string() << "\nif it is right: bin/golden_runner " << group
              << " --update " << each.name << "\n\n";
    return false;
}

int run_group(const std::string& group, const std::set<std::string>& to_update) {
    const fs::path program = RODWRIGHT_BINARY_DIR "/bin/rodwright";
    if (!fs::exists(program))
        throw std::runtime_error("there is no " + program.string() + ": build it first");
    const auto cases = find_cases(root / group);
    std::size_t failed = 0;
    std::set<std::string> missing = to_update;
    for (const Case& each : cases) {
        const Environment environment{program, RODWRIGHT_VERSION, results / group / each.name};
        const std::string actual = run_case(each, environment);
        if (missing.erase(each.name) > 0) write_file(each.expected, actual);
        if (!passes(each, group, actual)) ++failed;
    }
    for (const std::string& name : missing) std::cout << "no case " << name << " in " << group << '\n';
    std::cout << cases.size() << " cases, " << failed << " failed\n";
    return failed == 0 && missing.empty() && !cases.empty() ? 0 : 1;
}

int run(const std::vector<std::string>& arguments) {
    if (arguments == std::vector<std::string>{"--coverage"}) return check_coverage();
    const bool updates = arguments.size() > 2 && arguments[1] == "--update";
    if (arguments.size() != 1 && !updates) {
        std::cerr << "golden_runner GROUP [--update NAME...] | golden_runner --coverage\n";
        return 2;
    }
    return run_group(arguments[0],
                     updates ? std::set(arguments.begin() + 2, arguments.end()) : std::set<std::string>{});
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return run({argv + 1, argv + argc});
    } catch (const std::exception& error) {
        std::cerr << "golden_runner: " << error.what() << '\n';
        return 1;
    }
}
