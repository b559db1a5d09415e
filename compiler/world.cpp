#include "compiler/world.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <system_error>

#include "compiler/limits.hpp"

namespace rodwright {

namespace {

class OpenFile {
  public:
    explicit OpenFile(const std::string& path)
        : handle_(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)) {}
    ~OpenFile() {
        if (handle_ >= 0) ::close(handle_);
    }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;
    int handle() const { return handle_; }

  private:
    int handle_;
};

ReadResult refuse(std::string why) {
    return {std::nullopt, std::move(why)};
}

ReadResult refuse_with_errno() {
    if (errno == ENOENT) return refuse("no such file");
    return refuse(std::generic_category().message(errno));
}

ReadResult refuse_size() {
    return refuse(fmt::format("larger than {} MB", limits::file_bytes >> 20U));
}

// Stops one piece past the limit, whatever the size was when the file was opened: it may be growing.
ReadResult read_to_limit(int handle, std::size_t expected) {
    std::string text;
    text.reserve(expected + 1);
    char piece[65536];
    for (;;) {
        const ssize_t got = ::read(handle, piece, sizeof piece);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return refuse_with_errno();
        if (got == 0) return {std::move(text), ""};
        text.append(piece, static_cast<std::size_t>(got));
        if (text.size() > limits::file_bytes) return refuse_size();
    }
}

}  // namespace

// Only a plain file has an end that is known to come; opening without waiting keeps a named pipe from hanging
// the run before it can be refused.
ReadResult DiskWorld::read(const std::string& path) const {
    if (path.find('\0') != std::string::npos) return refuse("no such file");
    const OpenFile file(path);
    if (file.handle() < 0) return refuse_with_errno();
    struct stat state {};
    if (::fstat(file.handle(), &state) != 0) return refuse_with_errno();
    if (S_ISDIR(state.st_mode)) return refuse("it is a folder");
    if (!S_ISREG(state.st_mode)) return refuse("it is not a plain file");
    const auto size = static_cast<std::size_t>(state.st_size);
    if (size > limits::file_bytes) return refuse_size();
    return read_to_limit(file.handle(), size);
}

std::vector<std::string> DiskWorld::file_names(const std::string& folder) const {
    std::vector<std::string> names;
    std::error_code error;
    for (std::filesystem::directory_iterator at(folder, error), end; !error && at != end;
         at.increment(error)) {
        std::error_code unknown;
        if (at->is_regular_file(unknown)) names.push_back(at->path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace rodwright
