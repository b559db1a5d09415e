// The border between Open CASCADE and the rest: nothing thrown or signalled in there comes out.
#pragma once

#include <functional>

namespace rodwright::occt {

// Runs `work`; false if it threw, or was stopped by a signal such as a division by zero. The process's own
// signal handlers are back in place afterwards.
bool guarded(const std::function<void()>& work);

// Open CASCADE's messages go nowhere: what went wrong is said by our diagnostics.
void be_quiet();

}  // namespace rodwright::occt
