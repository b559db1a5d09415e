#include "compiler/cli/progress.hpp"

#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <utility>

namespace rodwright {

Progress::Progress(std::string phase) : phase_(std::move(phase)) {
    if (::isatty(STDERR_FILENO) == 1) watcher_ = std::thread([this] { wait_and_tell(); });
}

Progress::~Progress() {
    if (!watcher_.joinable()) return;
    {
        const std::lock_guard lock(mutex_);
        done_ = true;
    }
    done_changed_.notify_one();
    watcher_.join();
}

void Progress::wait_and_tell() {
    std::unique_lock lock(mutex_);
    const bool finished = done_changed_.wait_for(lock, std::chrono::seconds(1), [this] { return done_; });
    if (!finished) std::fprintf(stderr, "%s ...\n", phase_.c_str());
}

}  // namespace rodwright
