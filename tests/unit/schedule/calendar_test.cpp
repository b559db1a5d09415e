#include "compiler/workplan/schedule/calendar.hpp"

#include <doctest/doctest.h>

using namespace rodwright::schedule;

namespace {

constexpr Seconds hour = 3600;

// When work from `t` on is done, by walking from minute to minute; all times whole minutes.
Seconds walked_end(Seconds t, Seconds work, Seconds day) {
    while (work > 0) {
        if (t % whole_day < day) work -= 60;
        t += 60;
    }
    return t;
}

}  // namespace

TEST_SUITE("unit/schedule") {
    TEST_CASE("work goes on at working hours only") {
        const Calendar calendar(8 * hour);
        for (Seconds t = 0; t < 2 * whole_day; t += 50 * 60) {
            for (const Seconds work : {60, 3 * 3600, 8 * 3600, 17 * 3600, 24 * 3600, 50 * 3600}) {
                CAPTURE(t);
                CAPTURE(work);
                CHECK(calendar.end(t, work) == walked_end(t, work, 8 * hour));
            }
        }
        CHECK(Calendar(std::nullopt).end(5, 100 * hour) == 5 + 100 * hour);
    }

    TEST_CASE("the last begin is the last from which work is done in time") {
        const Calendar calendar(8 * hour);
        for (Seconds t = 5 * whole_day; t < 6 * whole_day; t += 50 * 60) {
            for (const Seconds work : {60, 3 * 3600, 8 * 3600, 17 * 3600, 24 * 3600}) {
                CAPTURE(t);
                CAPTURE(work);
                const Seconds begin = calendar.latest_begin(t, work);
                CHECK(calendar.end(begin, work) <= t);
                CHECK(calendar.end(begin + 60, work) > t);
            }
        }
    }

    TEST_CASE("a block that fits into a day lies in one") {
        const Calendar calendar(8 * hour);
        CHECK(calendar.begin(5 * hour, 3 * hour) == 5 * hour);
        CHECK(calendar.begin(6 * hour, 3 * hour) == whole_day);
        CHECK(calendar.begin(20 * hour, 0) == whole_day);
        CHECK(calendar.begin(6 * hour, 9 * hour) == 6 * hour);
        CHECK(calendar.begin(8 * hour, 9 * hour) == whole_day);
        CHECK(calendar.latest_begin_within_day(whole_day + 2 * hour, 2 * hour) == whole_day);
        CHECK(calendar.latest_begin_within_day(whole_day + 2 * hour, 3 * hour) == 5 * hour);
        CHECK(calendar.latest_begin_within_day(20 * hour, 3 * hour) == 5 * hour);
    }
}
