#include "compiler/workplan/duration.hpp"

#include <fmt/format.h>

#include "compiler/words.hpp"

namespace rodwright {

static std::string two_parts(Seconds large, const std::string& large_words, Seconds small,
                             const char* small_word) {
    if (large == 0) return fmt::format("{} {}", small, small_word);
    return small == 0 ? large_words : fmt::format("{} {} {}", large_words, small, small_word);
}

std::string duration_words(Seconds seconds) {
    constexpr Seconds minute = 60;
    constexpr Seconds hour = 60 * minute;
    constexpr Seconds day = 24 * hour;
    if (seconds < minute) return fmt::format("{} s", seconds);
    const auto rounded = [](Seconds value, Seconds step) { return (value + step / 2) / step * step; };
    const Seconds minutes = rounded(seconds, seconds < hour ? minute : 5 * minute);
    if (minutes < day)
        return two_parts(minutes / hour, fmt::format("{} h", minutes / hour), minutes % hour / minute, "min");
    const Seconds hours = rounded(seconds, hour);
    // A day and a bit is said in hours: 30 h.
    if (hours < 2 * day) return fmt::format("{} h", hours / hour);
    return two_parts(hours / day, counted(static_cast<std::size_t>(hours / day), "day"), hours % day / hour,
                     "h");
}

}  // namespace rodwright
