// All that the compiler takes from outside: files to read. The command line gives it the disk, tests give it
// a map in memory, so that every stage can be run without touching either.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace rodwright {

struct ReadResult {
    std::optional<std::string> text;  // empty if it cannot be read
    std::string error;                // then why: "no such file"
};

class World {
  public:
    virtual ~World() = default;
    // `path` uses '/' and is relative to where the run was started, or absolute.
    virtual ReadResult read(const std::string& path) const = 0;
    // Names of the plain files in a folder, sorted; none if it cannot be read.
    virtual std::vector<std::string> file_names(const std::string& folder) const = 0;
};

class MemoryWorld : public World {
  public:
    MemoryWorld() = default;
    explicit MemoryWorld(std::map<std::string, std::string> files) : files_(std::move(files)) {}
    ReadResult read(const std::string& path) const override {
        const auto found = files_.find(path);
        if (found == files_.end()) return {std::nullopt, "no such file"};
        return {found->second, ""};
    }
    std::vector<std::string> file_names(const std::string& folder) const override {
        std::vector<std::string> names;
        for (const auto& [path, text] : files_) {
            if (!path.starts_with(folder + "/")) continue;
            std::string name = path.substr(folder.size() + 1);
            if (name.find('/') == std::string::npos) names.push_back(std::move(name));
        }
        return names;
    }

  private:
    std::map<std::string, std::string> files_;
};

// Files as they are on the disk; refuses what is larger than limits::file_bytes before reading it.
class DiskWorld : public World {
  public:
    ReadResult read(const std::string& path) const override;
    std::vector<std::string> file_names(const std::string& folder) const override;
};

}  // namespace rodwright
