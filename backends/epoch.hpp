// The date that a run is told to write, since it must not look at a clock (reproducible-builds.org).
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace rodwright {

// Seconds since 1970-01-01 UTC up to the year 9999, written as a whole number; empty if `text` is anything
// else.
std::optional<std::chrono::sys_seconds> epoch_time(const std::string& text);

// What SOURCE_DATE_EPOCH says in BackendInput::environment.
std::optional<std::chrono::sys_seconds> source_date(
    const std::vector<std::pair<std::string, std::string>>& environment);

}  // namespace rodwright
