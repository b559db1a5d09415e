// Says on standard error what is going on, if it takes more than a second and a person is there to read it.
#pragma once

#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

namespace rodwright {

// Covers one phase, from construction to destruction. "drawing the packet" is printed once.
class Progress {
  public:
    explicit Progress(std::string phase);
    ~Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;

  private:
    void wait_and_tell();

    std::string phase_;
    std::mutex mutex_;
    std::condition_variable done_changed_;
    bool done_ = false;
    std::thread watcher_;
};

}  // namespace rodwright
