// A new empty folder for one test, removed with everything in it at the end.
#pragma once

#include <stdlib.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

namespace rodwright {

class ScratchFolder {
  public:
    ScratchFolder() {
        std::string name = (std::filesystem::temp_directory_path() / "rodwright-test-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no scratch folder");
        path_ = name;
    }
    ~ScratchFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }
    void put(const std::string& name, const std::string& bytes) const {
        std::ofstream(path_ / name, std::ios::binary) << bytes;
    }
    // The file's bytes; throws if there is none.
    std::string get(const std::string& name) const {
        std::ifstream file(path_ / name, std::ios::binary);
        if (!file) throw std::runtime_error("no file " + name);
        return {std::istreambuf_iterator<char>(file), {}};
    }
    // How many files, folders not counted, are in it at any depth.
    std::size_t count() const {
        std::size_t files = 0;
        for (const auto& each : std::filesystem::recursive_directory_iterator(path_)) {
            if (!each.is_directory()) ++files;
        }
        return files;
    }

  private:
    std::filesystem::path path_;
};

}  // namespace rodwright
