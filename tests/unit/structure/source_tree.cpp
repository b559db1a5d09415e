#include "tests/unit/structure/source_tree.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace rodwright::testing {

namespace {

namespace fs = std::filesystem;

const fs::path root = RODWRIGHT_SOURCE_DIR;

bool ends_in_one_of(const std::string& name, const std::vector<std::string>& endings) {
    return std::any_of(endings.begin(), endings.end(),
                       [&](const std::string& ending) { return name.ends_with(ending); });
}

}  // namespace

SourceFile source_file(const std::string& path) {
    std::ifstream file(root / path, std::ios::binary);
    if (!file) throw std::runtime_error("cannot read " + path);
    std::ostringstream text;
    text << file.rdbuf();
    return {path, text.str()};
}

std::vector<SourceFile> source_files(const std::vector<std::string>& folders,
                                     const std::vector<std::string>& endings) {
    std::vector<std::string> paths;
    for (const std::string& folder : folders) {
        for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
            const std::string path = fs::relative(entry.path(), root).generic_string();
            if (entry.is_regular_file() && ends_in_one_of(path, endings)) paths.push_back(path);
        }
    }
    std::sort(paths.begin(), paths.end());
    std::vector<SourceFile> files;
    for (const std::string& path : paths) files.push_back(source_file(path));
    return files;
}

std::vector<std::string> entries_of(const std::string& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(root / folder)) {
        const std::string name = entry.path().filename().string();
        if (!name.starts_with('.')) names.push_back(name);
    }
    std::sort(names.begin(), names.end());
    return names;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::vector<Fence> fences_of(const std::string& markdown) {
    std::vector<Fence> fences;
    bool inside = false;
    std::size_t number = 0;
    for (const std::string& line : lines_of(markdown)) {
        ++number;
        if (line.starts_with("```")) {
            if (!inside) fences.push_back({line.substr(3), "", number});
            inside = !inside;
        } else if (inside) {
            fences.back().text += line + '\n';
        }
    }
    if (inside) throw std::runtime_error("a fence is not closed");
    return fences;
}

}  // namespace rodwright::testing
