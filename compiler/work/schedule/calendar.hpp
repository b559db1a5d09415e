// When there is work: from each morning on for the hours of a day, or always.
#pragma once

#include "compiler/work/schedule/problem.hpp"

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

    // How long work takes on the average, nights included.
    Seconds stretched(Seconds work) const { return day_ == whole_day ? work : work * whole_day / day_; }

  private:
    Seconds day_;
};

}  // namespace rodwright::schedule
