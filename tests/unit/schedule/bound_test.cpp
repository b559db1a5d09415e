// Bounds that can be worked out by hand.
#include <doctest/doctest.h>

#include "compiler/workplan/schedule/schedule.hpp"

using namespace rodwright::schedule;

namespace {

constexpr Seconds hour_long = 3600;

Job work_of(Seconds work, Seconds rest = 0) {
    Job job;
    job.work = work;
    job.rest = rest;
    return job;
}

Bound bound_of(const Problem& problem) {
    return make_timetable(problem).value().bound;
}

}  // namespace

TEST_SUITE("unit/schedule") {
    TEST_CASE("all the work of one worker, of two") {
        Problem problem;
        problem.set_ups = {{0, 4}, {1, 6}};
        problem.jobs = {work_of(10), work_of(10), work_of(10)};
        problem.jobs[0].set_up = problem.jobs[1].set_up = 0;
        problem.jobs[2].set_up = 1;
        Bound bound = bound_of(problem);
        CHECK(bound.makespan == 40);
        CHECK(bound.set_ups == 2);
        CHECK(bound.reason == Bound::Reason::work);
        CHECK(bound.jobs == std::vector<std::size_t>{0, 1, 2});
        problem.workers = 2;
        bound = bound_of(problem);
        CHECK(bound.makespan == 20);
    }

    TEST_CASE("a chain with its waits") {
        Problem problem;
        problem.jobs = {work_of(10, 500), work_of(20), work_of(5)};
        problem.precedences = {{0, 2, 100}, {2, 1, 600}};
        const Bound bound = bound_of(problem);
        CHECK(bound.makespan == 735);
        CHECK(bound.reason == Bound::Reason::chain);
        CHECK(bound.jobs == std::vector<std::size_t>{0, 2, 1});
    }

    TEST_CASE("a set-up between two jobs at one machine that follow each other") {
        Problem problem;
        problem.workers = 2;
        problem.set_ups = {{0, 7}, {0, 9}};
        problem.jobs = {work_of(10), work_of(20)};
        problem.jobs[0].set_up = 0;
        problem.jobs[1].set_up = 1;
        problem.precedences = {{0, 1, 2}};
        CHECK(bound_of(problem).makespan == 7 + 10 + 9 + 20);
    }

    // Three jobs that wait for 100 before and 50 after: min head + work + min tail.
    TEST_CASE("work between waits") {
        Problem problem;
        problem.jobs = {work_of(1), work_of(10, 50), work_of(20, 60), work_of(30, 70)};
        for (std::size_t job = 1; job <= 3; ++job) problem.precedences.push_back({0, job, 100});
        const Bound bound = bound_of(problem);
        CHECK(bound.makespan == 1 + 100 + 60 + 50);
        CHECK(bound.reason == Bound::Reason::between);
        CHECK(bound.jobs == std::vector<std::size_t>{1, 2, 3});
    }

    // Glue-ups of two hours each, one after the other, and a coat four hours after the last of them: all
    // glue-ups fill the day, so the coat is put on the next morning.
    TEST_CASE("a night before the last coat") {
        Problem problem;
        problem.day = 8 * hour_long;
        problem.jobs.assign(3, work_of(2 * hour_long));
        problem.jobs.push_back(work_of(hour_long, 10 * hour_long));
        for (std::size_t job = 0; job < 3; ++job) problem.precedences.push_back({job, 3, 4 * hour_long});
        const Timetable timetable = make_timetable(problem).value();
        CHECK(timetable.bound.makespan == whole_day + 11 * hour_long);
        CHECK(timetable.makespan == timetable.bound.makespan);
    }

    TEST_CASE("a tolerance saves a set-up, and never costs more than it may") {
        // A part with a long wait after it wants the second setting first; then the first one is made twice.
        Problem problem;
        problem.set_ups = {{0, 10}, {0, 10}};
        problem.jobs = {work_of(10), work_of(10), work_of(10, 1000)};
        problem.jobs[0].set_up = problem.jobs[1].set_up = 0;
        problem.jobs[2].set_up = 1;
        problem.precedences = {{0, 2, 0}};
        const Timetable shortest = make_timetable(problem).value();
        CHECK(shortest.makespan == 1040);
        CHECK(shortest.set_ups == 3);
        problem.tolerance = 1;
        const Timetable easier = make_timetable(problem).value();
        CHECK(easier.makespan == 1050);
        CHECK(easier.set_ups == 2);
    }
}
