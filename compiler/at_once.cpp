#include "compiler/at_once.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <system_error>
#include <vector>

namespace rodwright {

std::jthread start_thread(const std::function<void()>& run) {
    return std::jthread(run);
}

// As many as there are, up to that number: what no helper does is left for the caller.
static std::vector<std::jthread> helpers_for(std::size_t wanted, const std::function<void()>& run,
                                             const StartThread& start) {
    std::vector<std::jthread> helpers;
    try {
        while (helpers.size() < wanted) helpers.push_back(start(run));
    } catch (const std::system_error&) {
        // The machine is as busy as it lets itself be.
    }
    return helpers;
}

void at_once(std::size_t count, const std::function<void(std::size_t)>& work, const StartThread& start) {
    std::vector<std::exception_ptr> failures(count);
    std::atomic<std::size_t> next = 0;
    const auto take_turns = [&] {
        for (std::size_t i = next++; i < count; i = next++) {
            try {
                work(i);
            } catch (...) {
                failures[i] = std::current_exception();
            }
        }
    };
    {
        const std::size_t threads =
            std::min<std::size_t>(std::max(1U, std::thread::hardware_concurrency()), count);
        const std::vector<std::jthread> helpers =
            helpers_for(threads > 1 ? threads - 1 : 0, take_turns, start);
        take_turns();
    }
    for (const std::exception_ptr& failure : failures) {
        if (failure) std::rethrow_exception(failure);
    }
}

}  // namespace rodwright
