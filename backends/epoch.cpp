#include "backends/epoch.hpp"

#include <charconv>
#include <cstdint>

namespace rodwright {

std::optional<std::chrono::sys_seconds> epoch_time(const std::string& text) {
    std::int64_t seconds = 0;
    const char* end = text.data() + text.size();
    const auto [read_to, error] = std::from_chars(text.data(), end, seconds);
    constexpr std::int64_t year_9999 = 253402300799;
    if (error != std::errc() || read_to != end || seconds < 0 || seconds > year_9999) return std::nullopt;
    return std::chrono::sys_seconds(std::chrono::seconds(seconds));
}

std::optional<std::chrono::sys_seconds> source_date(
    const std::vector<std::pair<std::string, std::string>>& environment) {
    for (const auto& [name, value] : environment) {
        if (name == "SOURCE_DATE_EPOCH") return epoch_time(value);
    }
    return std::nullopt;
}

}  // namespace rodwright
