// The scheduler's one function: from jobs that wait for one another to who does which when.
#pragma once

#include "compiler/workplan/schedule/problem.hpp"

namespace rodwright::schedule {

struct Entry {
    std::size_t job = 0;
    std::size_t worker = 0;
    Seconds begin = 0;  // of the set-up, where one is made; else of the work
    Seconds work_begins = 0;
    Seconds end = 0;
    bool sets_up = false;

    friend bool operator==(const Entry&, const Entry&) = default;
};

// What no timetable can do better than.
struct Bound {
    enum class Reason : std::uint8_t {
        chain,   // `jobs` follow one another, with their waits
        work,    // `jobs`, all there are, and their set-ups fill the workers' time
        between  // `jobs` and their set-ups fill the workers' time between what comes before and after each
                 // of them
    };

    Seconds makespan = 0;
    Reason reason = Reason::work;
    std::vector<std::size_t> jobs;  // a chain in its order, others ascending
    std::size_t set_ups = 0;        // distinct ones that jobs ask for

    friend bool operator==(const Bound&, const Bound&) = default;
};

struct Timetable {
    std::vector<Entry> entries;  // in order of begin
    Seconds makespan = 0;        // until the last job has ended and its rest has passed
    std::size_t set_ups = 0;     // made
    std::size_t handling = 0;    // parts that a worker takes in hand and did not have there in the job before
    Bound bound;

    friend bool operator==(const Timetable&, const Timetable&) = default;
};

// A timetable with a makespan as short as found; among such with few set-ups; then with little handling; and
// then close to the natural order, the one by rank that keeps the precedences. Up to nine jobs the makespan
// is the least that there is (or within the tolerance) and the set-ups the fewest for it, as the search has
// room for all orders; more than 1000 jobs are done in natural order. Nothing if precedences go in a circle.
// An index out of range, a negative or too long time, too many jobs or another number of workers are the
// caller's mistake: std::invalid_argument.
std::optional<Timetable> make_timetable(const Problem& problem, Effort effort = {});

}  // namespace rodwright::schedule
