// When there is work: from each morning on for the hours of a day, or always.
#pragma once

#include <algorithm>

#include "compiler/workplan/schedule/problem.hpp"

namespace rodwright::schedule {

class Calendar {
  public:
    explicit Calendar(std::optional<Seconds> day) : day_(day.value_or(whole_day)) {}

    // The first time from `t` on at which a block of work may begin.
    Seconds begin(Seconds t, Seconds block) const {
        if (day_ == whole_day) return t;
        const Seconds hour = t % whole_day;
        const bool fits = fits_day(block) ? hour + block <= day_ : hour < day_;
        return fits ? t : t - hour + whole_day;
    }

    bool fits_day(Seconds block) const { return day_ == whole_day || block <= day_; }

    // When work that goes on from `t` at all working hours is done.
    Seconds end(Seconds t, Seconds work) const {
        if (day_ == whole_day || work == 0) return t + work;
        const Seconds hour = t % whole_day;
        const Seconds today = hour < day_ ? day_ - hour : 0;
        if (work <= today) return t + work;
        const Seconds later = work - today;
        const Seconds full_days = (later - 1) / day_;
        return t - hour + whole_day * (1 + full_days) + later - full_days * day_;
    }

    // The last time at which work may begin that goes on at all working hours and is to be done at `t`.
    Seconds latest_begin(Seconds t, Seconds work) const {
        if (day_ == whole_day || work == 0) return t - work;
        const Seconds hour = std::min(t % whole_day, day_);
        const Seconds morning = t - t % whole_day;
        if (work <= hour) return morning + hour - work;
        const Seconds before = work - hour;
        const Seconds full_days = (before - 1) / day_;
        return morning - whole_day * (1 + full_days) + day_ - (before - full_days * day_);
    }

    // The same for work that has to lie within a day.
    Seconds latest_begin_within_day(Seconds t, Seconds work) const {
        if (day_ == whole_day) return t - work;
        const Seconds morning = t - t % whole_day;
        const Seconds hour = std::min(t - morning, day_);
        return hour >= work ? morning + hour - work : morning - whole_day + day_ - work;
    }

    bool has_nights() const { return day_ < whole_day; }

    // How long work takes on the average, nights included.
    Seconds stretched(Seconds work) const { return day_ == whole_day ? work : work * whole_day / day_; }

  private:
    Seconds day_;
};

}  // namespace rodwright::schedule
