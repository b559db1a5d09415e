// Jobs, workers and machines to be put into a timetable: the input of the scheduler, as a value. It knows
// nothing of furniture but these words.
//
// All times are whole seconds, at most `longest` each; the clock begins at 0, in the morning of the first
// day.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace rodwright::schedule {

using Seconds = std::int64_t;

inline constexpr Seconds longest = 315'360'000;  // ten years: sums over most_jobs stay far from overflow
inline constexpr Seconds shortest_day = 3'600;
inline constexpr Seconds whole_day = 86'400;
inline constexpr std::size_t most_jobs = 20'000;

// A distinct setting of a machine; a machine holds one at a time, and none at first. It is made by the worker
// who is about to do a job with it, just before the job. It needs no parts, so it may be made in the last
// minutes that they still have to wait, and it is needed if the machine's last job had another one or there
// was none.
struct SetUp {
    std::size_t machine = 0;
    Seconds work = 0;
};

// What one worker does in one go.
struct Job {
    Seconds work = 0;                   // without the set-up
    std::optional<std::size_t> set_up;  // a job with one has the machine for itself
    std::size_t rank = 0;               // its place in the natural order of work, index breaks ties
    std::vector<std::size_t> parts;     // ascending; what is in hand meanwhile
    Seconds rest = 0;  // that must pass after its end before all is done: the last coat dries
};

// The work of `after` begins no earlier than `wait` after the end of `before`.
struct Precedence {
    std::size_t before = 0;
    std::size_t after = 0;
    Seconds wait = 0;
};

struct Problem {
    std::vector<SetUp> set_ups;
    std::vector<Job> jobs;
    std::vector<Precedence> precedences;
    std::size_t workers = 1;  // or 2, who can do the same
    // Hours worked a day, from shortest_day to whole_day. A job that, with its set-up, does not fit before
    // the end of the day begins the next morning; one longer than a day goes on the next morning. Waits run
    // on at night. Nothing: the clock of work runs through.
    std::optional<Seconds> day;
    // A makespan that is at most so many hundredths over the lower bound is as good as any: a long day's work
    // for a few minutes less is not worth another set-up. At 0 the shortest makespan comes first whatever it
    // takes.
    int tolerance = 0;
};

// How much is tried; counted, never timed, so that the result is the same on every machine.
struct Effort {
    std::size_t width = 16;  // timetables that grow at once
    std::size_t moves = 60;  // for each job, then; fewer from 500 jobs on
};

}  // namespace rodwright::schedule
