// Where backends put what they make: a folder that changes all at once or not at all.
//
// `write` only collects. `commit` writes every file under a temporary name beside its place, has it reach the
// disk, and moves all of them into place when all are written; if anything fails, the files that were there
// before are still there, whole.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

class OutputFolder {
  public:
    // In memory only: `commit` checks the names and touches no disk.
    OutputFolder() = default;
    explicit OutputFolder(std::filesystem::path folder) : folder_(std::move(folder)) {}

    // `name` is relative, with `/` between a subfolder and what is in it: "drawings/leg.svg". A name that
    // would leave the folder, or that is given twice, is reported by `commit`, which then writes nothing.
    void write(std::string name, std::string bytes);
    // True if every file is in place; otherwise Code::cannot_write is in `diagnostics`.
    bool commit(Diagnostics& diagnostics);

    // By name, in sorted order.
    const std::map<std::string, std::string>& files() const { return files_; }

  private:
    std::optional<std::filesystem::path> folder_;
    std::map<std::string, std::string> files_;
    std::vector<Diagnostic> refused_;
};

// Replaces one file in the same way; follows a symbolic link to the file it means.
bool replace_file(const std::filesystem::path& path, std::string_view bytes, Diagnostics& diagnostics);

}  // namespace rodwright
