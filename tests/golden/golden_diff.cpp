#include "tests/golden/golden_diff.hpp"

#include <algorithm>
#include <vector>

#include "tests/golden/golden_case.hpp"

namespace rodwright::golden {

namespace {

using Lines = std::vector<std::string>;
constexpr std::ptrdiff_t context = 3;

std::string marked(const char* mark, Lines::const_iterator begin, Lines::const_iterator end) {
    std::string text;
    for (; begin != end; ++begin) text += mark + *begin + "\n";
    return text;
}

}  // namespace

std::string difference(const std::string& expected, const std::string& actual) {
    if (expected == actual) return {};
    const Lines old_lines = split_lines(expected);
    const Lines new_lines = split_lines(actual);
    const auto [old_begin, new_begin] =
        std::mismatch(old_lines.begin(), old_lines.end(), new_lines.begin(), new_lines.end());
    const auto [old_rend, new_rend] =
        std::mismatch(old_lines.rbegin(), std::make_reverse_iterator(old_begin), new_lines.rbegin(),
                      std::make_reverse_iterator(new_begin));
    const auto lead = std::min(context, old_begin - old_lines.begin());
    const auto tail = std::min(context, old_lines.end() - old_rend.base());
    return "@@ line " + std::to_string(old_begin - old_lines.begin() + 1) + " @@\n" +
           marked("  ", old_begin - lead, old_begin) + marked("- ", old_begin, old_rend.base()) +
           marked("+ ", new_begin, new_rend.base()) + marked("  ", old_rend.base(), old_rend.base() + tail);
}

}  // namespace rodwright::golden
