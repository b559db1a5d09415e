// Work of which no piece waits for another, done at the same time.
#pragma once

#include <cstddef>
#include <functional>
#include <thread>

namespace rodwright {

// Starts a thread that runs what it is given; throws std::system_error where the system has none to give.
using StartThread = std::function<std::jthread(const std::function<void()>& run)>;
std::jthread start_thread(const std::function<void()>& run);

// Calls work(0) ... work(count - 1) on as many threads as the machine has cores, or on those that can be had.
// They are begun in that order, so what takes long is best put first; each must write to a place of its own.
// Returns when all are done, and then throws what the first of them that failed threw.
void at_once(std::size_t count, const std::function<void(std::size_t)>& work,
             const StartThread& start = start_thread);

}  // namespace rodwright
