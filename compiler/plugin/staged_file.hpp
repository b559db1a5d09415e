// One file on its way to the disk: first whole under a temporary name beside its place, then moved there.
//
// Until `publish` the old file is untouched; a StagedFile that is destroyed before removes its temporary
// file. Errors are POSIX error numbers in a std::error_code.
#pragma once

#include <filesystem>
#include <string_view>
#include <system_error>

namespace rodwright {

class StagedFile {
  public:
    // `number` tells the temporary files of one run in one folder apart.
    StagedFile(std::filesystem::path target, std::size_t number);
    ~StagedFile();
    StagedFile(StagedFile&& other) noexcept;
    StagedFile(const StagedFile&) = delete;
    StagedFile& operator=(const StagedFile&) = delete;
    StagedFile& operator=(StagedFile&&) = delete;

    const std::filesystem::path& target() const { return target_; }
    // Writes `bytes` and has them reach the disk. Keeps the permissions of the file to be replaced.
    std::error_code write(std::string_view bytes);
    // Puts the new file in its place. What stood there is kept, where the file system can, for `take_back`.
    std::error_code publish();
    void take_back();
    // Lets go of what stood there before.
    void settle();

  private:
    enum class State { empty, staged, added, exchanged, settled };

    std::filesystem::path target_;
    std::filesystem::path temporary_;
    State state_ = State::empty;
};

}  // namespace rodwright
