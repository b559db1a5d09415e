#include "tests/golden/code_coverage.hpp"

#include <map>
#include <set>

#include "compiler/diagnostics/diagnostic.hpp"
#include "tests/golden/golden_case.hpp"

namespace rodwright::golden {

namespace {

using Faults = std::vector<std::string>;

bool shows(const std::string& text, std::string_view code) {
    return text.find("[" + std::string(code) + "]") != std::string::npos ||
           text.find("\"code\":\"" + std::string(code) + "\"") != std::string::npos;
}

std::map<std::string, std::string> read_exempt(const fs::path& path, Faults& faults) {
    std::map<std::string, std::string> exempt;
    for (const std::string& line : split_lines(read_file(path))) {
        if (line.empty() || line.front() == '#') continue;
        const std::string code = line.substr(0, line.find(' '));
        const std::string reason = line.substr(code.size());
        if (reason.find_first_not_of(' ') == std::string::npos)
            faults.push_back(code + " is exempt without a reason");
        if (find_code(code) == nullptr) faults.push_back(code + " is exempt but is no code");
        exempt[code] = reason;
    }
    return exempt;
}

// The codes that the cases show; a case whose name begins with a code must show that one.
std::set<std::string_view> codes_shown(const fs::path& root, Faults& faults) {
    std::set<std::string_view> shown;
    for (const auto& entry : fs::recursive_directory_iterator(root)) {
        if (entry.path().extension() != ".expected") continue;
        const std::string text = read_file(entry.path());
        for (const CodeInfo& each : all_codes()) {
            if (shows(text, each.code)) shown.insert(each.code);
        }
        const CodeInfo* named = find_code(entry.path().stem().string().substr(0, 5));
        if (named == nullptr || shows(text, named->code)) continue;
        faults.push_back(entry.path().string() + " does not show the code it is named after");
    }
    return shown;
}

}  // namespace

Faults code_coverage_faults(const fs::path& root) {
    Faults faults;
    const auto exempt = read_exempt(root / "exempt", faults);
    const auto shown = codes_shown(root, faults);
    for (const CodeInfo& each : all_codes()) {
        const bool is_exempt = exempt.contains(std::string(each.code));
        if (shown.contains(each.code) && is_exempt) {
            faults.push_back(std::string(each.code) +
                             " is exempt, but a case shows it: take it off the list");
        } else if (!shown.contains(each.code) && !is_exempt) {
            faults.push_back(std::string(each.code) + " is in no golden case: " + std::string(each.title));
        }
    }
    return faults;
}

}  // namespace rodwright::golden
