#include "compiler/plugin/staged_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <string>
#include <utility>

namespace rodwright {

namespace {

std::error_code last_error() {
    return {errno, std::generic_category()};
}

std::error_code write_all(int file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return last_error();
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return {};
}

std::error_code write_and_sync(int file, std::string_view bytes) {
    if (const auto error = write_all(file, bytes)) return error;
    if (::fsync(file) != 0) return last_error();
    return {};
}

// Some file systems cannot exchange two names; there the move is still whole, but cannot be taken back.
bool cannot_exchange(int error) {
    return error == EINVAL || error == ENOSYS || error == ENOTSUP;
}

}  // namespace

StagedFile::StagedFile(std::filesystem::path target, std::size_t number)
    : target_(std::move(target)),
      temporary_(target_.parent_path() /
                 (".rodwright-" + std::to_string(::getpid()) + "-" + std::to_string(number))) {}

StagedFile::StagedFile(StagedFile&& other) noexcept
    : target_(std::move(other.target_)),
      temporary_(std::move(other.temporary_)),
      state_(std::exchange(other.state_, State::empty)) {}

StagedFile::~StagedFile() {
    if (state_ == State::staged || state_ == State::exchanged) ::unlink(temporary_.c_str());
}

std::error_code StagedFile::write(std::string_view bytes) {
    struct stat old {};
    const bool replaces = ::stat(target_.c_str(), &old) == 0;
    if (replaces && S_ISDIR(old.st_mode)) return {EISDIR, std::generic_category()};
    const int file =
        ::open(temporary_.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_NOFOLLOW | O_CLOEXEC, mode_t{0666});
    if (file < 0) return last_error();
    state_ = State::staged;
    std::error_code error = write_and_sync(file, bytes);
    if (!error && replaces && ::fchmod(file, old.st_mode & 0777U) != 0) error = last_error();
    if (::close(file) != 0 && !error) error = last_error();
    return error;
}

std::error_code StagedFile::publish() {
    if (::renameat2(AT_FDCWD, temporary_.c_str(), AT_FDCWD, target_.c_str(), RENAME_EXCHANGE) == 0) {
        state_ = State::exchanged;
        return {};
    }
    if (errno != ENOENT && !cannot_exchange(errno)) return last_error();
    const bool is_new = errno == ENOENT;
    if (::rename(temporary_.c_str(), target_.c_str()) != 0) return last_error();
    state_ = is_new ? State::added : State::settled;
    return {};
}

void StagedFile::take_back() {
    if (state_ == State::added) {
        ::unlink(target_.c_str());
        state_ = State::empty;
    } else if (state_ == State::exchanged) {
        // Even if this fails the state is left, or the destructor would remove the only old copy.
        ::rename(temporary_.c_str(), target_.c_str());
        state_ = State::empty;
    }
}

void StagedFile::settle() {
    if (state_ == State::exchanged) ::unlink(temporary_.c_str());
    state_ = State::settled;
}

}  // namespace rodwright
