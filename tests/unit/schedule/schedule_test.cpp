// Timetables of made-up work keep to the rules, whatever it looks like.
#include <doctest/doctest.h>

#include <stdexcept>

#include "tests/support/shop_work.hpp"
#include "tests/unit/schedule/timetable_checker.hpp"

using namespace rodwright::schedule;

namespace {

// With sanitizers everything takes ten times as long, and every eighth says as much about memory.
#ifdef RODWRIGHT_SANITIZED
constexpr std::uint64_t seed_step = 8;
#else
constexpr std::uint64_t seed_step = 1;
#endif

Job job(Seconds work, std::optional<std::size_t> set_up = std::nullopt) {
    Job job;
    job.work = work;
    job.set_up = set_up;
    return job;
}

// The timetable, after all rules have been checked.
Timetable checked(const Problem& problem) {
    const std::optional<Timetable> timetable = make_timetable(problem);
    REQUIRE(timetable.has_value());
    std::string faults;
    for (const std::string& fault : check_timetable(problem, *timetable)) faults += fault + "\n";
    CHECK(faults == "");
    return *timetable;
}

std::vector<std::size_t> order_of(const Timetable& timetable) {
    std::vector<std::size_t> order;
    for (const Entry& entry : timetable.entries) order.push_back(entry.job);
    return order;
}

}  // namespace

TEST_SUITE("unit/schedule") {
    TEST_CASE("work of a shop keeps to the rules") {
        for (const std::size_t workers : {1U, 2U}) {
            for (const auto day : {std::optional<Seconds>{}, std::optional<Seconds>{8 * 3600}}) {
                for (std::uint64_t seed = 1; seed <= 6; seed += seed_step) {
                    for (const int parts : {2, 6, 25}) {
                        CAPTURE(seed);
                        checked(shop_work({parts, workers, day}, seed));
                    }
                }
            }
        }
    }

    TEST_CASE("small work without any sense keeps to the rules") {
        for (const std::size_t workers : {1U, 2U}) {
            for (std::uint64_t seed = 1; seed <= 60; seed += seed_step) {
                CAPTURE(seed);
                Problem problem = small_work(static_cast<int>(seed % 15), workers, seed);
                checked(problem);
                // Days of three hours, jobs up to the same.
                problem.day = 3 * 3600;
                for (Job& each : problem.jobs) each.work *= 900;
                for (SetUp& each : problem.set_ups) each.work *= 500;
                for (Precedence& each : problem.precedences) each.wait *= 5000;
                checked(problem);
            }
        }
    }

    TEST_CASE("the same problem gives the same timetable") {
        const Problem problem = shop_work({30, 2, 8 * 3600}, 5);
        CHECK(*make_timetable(problem) == *make_timetable(problem));
    }

    TEST_CASE("other work goes on while glue dries") {
        Problem problem;
        problem.jobs = {job(10), job(5), job(20)};
        problem.precedences = {{0, 1, 30}};
        const Timetable timetable = checked(problem);
        CHECK(order_of(timetable) == std::vector<std::size_t>{0, 2, 1});
        CHECK(timetable.makespan == 45);
        CHECK(timetable.bound.reason == Bound::Reason::chain);
        CHECK(timetable.bound.jobs == std::vector<std::size_t>{0, 1});
    }

    TEST_CASE("the natural order stays where nothing is gained") {
        Problem problem;
        for (std::size_t rank : {2U, 0U, 3U, 1U}) {
            problem.jobs.push_back(job(10));
            problem.jobs.back().rank = rank;
        }
        CHECK(order_of(checked(problem)) == std::vector<std::size_t>{1, 3, 0, 2});
    }

    TEST_CASE("jobs with one set-up are done together, and the set-up is made while parts wait") {
        Problem problem;
        problem.set_ups = {{0, 7}, {0, 7}};
        problem.jobs = {job(10, 0), job(10, 1), job(10, 0), job(1)};
        problem.precedences = {{3, 0, 100}, {3, 1, 100}, {3, 2, 100}};
        const Timetable timetable = checked(problem);
        CHECK(order_of(timetable) == std::vector<std::size_t>{3, 0, 2, 1});
        CHECK(timetable.set_ups == 2);
        CHECK(timetable.makespan == 138);
        CHECK(timetable.entries[1].begin == 94);
        CHECK(timetable.entries[1].work_begins == 101);
    }

    TEST_CASE("of two workers each keeps what he has in hand") {
        Problem problem;
        problem.workers = 2;
        problem.jobs = {job(10), job(10), job(10), job(10)};
        problem.jobs[0].parts = problem.jobs[3].parts = {1, 2};
        problem.jobs[1].parts = problem.jobs[2].parts = {3};
        const Timetable timetable = checked(problem);
        CHECK(timetable.makespan == 20);
        CHECK(timetable.handling == 3);
    }

    TEST_CASE("a machine is used by one worker at a time") {
        Problem problem;
        problem.workers = 2;
        problem.set_ups = {{3, 5}};
        problem.jobs = {job(10, 0), job(10, 0)};
        const Timetable timetable = checked(problem);
        CHECK(timetable.makespan == 25);
        CHECK(timetable.set_ups == 1);
    }

    TEST_CASE(
        "a job that does not fit before the evening begins in the morning; a longer one than a day goes on") {
        Problem problem;
        problem.day = 4 * 3600;
        problem.jobs = {job(3 * 3600), job(2 * 3600), job(9 * 3600)};
        problem.precedences = {{0, 1, 0}, {1, 2, 0}};
        const Timetable timetable = checked(problem);
        CHECK(timetable.entries[1].begin == whole_day);
        CHECK(timetable.entries[1].end == whole_day + 2 * 3600);
        // Two hours the same day, four on each of the next, one on the last.
        CHECK(timetable.entries[2].begin == whole_day + 2 * 3600);
        CHECK(timetable.entries[2].end == 3 * whole_day + 3 * 3600);
    }

    TEST_CASE("the last coat has to dry") {
        Problem problem;
        problem.jobs = {job(10), job(20)};
        problem.jobs[0].rest = 100;
        const Timetable timetable = checked(problem);
        CHECK(timetable.makespan == 110);
    }

    TEST_CASE("no effort at all is enough for a timetable") {
        const Problem problem = shop_work({20, 2, std::nullopt}, 3);
        const Timetable timetable = make_timetable(problem, {0, 0}).value();
        CHECK(check_timetable(problem, timetable).empty());
    }

    TEST_CASE("a circle has no timetable") {
        Problem problem;
        problem.jobs = {job(1), job(1), job(1)};
        problem.precedences = {{0, 1, 0}, {1, 2, 5}, {2, 0, 0}};
        CHECK_FALSE(make_timetable(problem).has_value());
        problem.precedences = {{1, 1, 0}};
        CHECK_FALSE(make_timetable(problem).has_value());
    }

    TEST_CASE("nothing, a single job, no time at all, the longest times") {
        CHECK(checked({}).makespan == 0);
        Problem problem;
        problem.jobs = {job(0)};
        CHECK(checked(problem).makespan == 0);
        problem.jobs.assign(30, job(0));
        CHECK(checked(problem).makespan == 0);
        problem.day = shortest_day;
        problem.jobs.assign(300, job(longest));
        for (std::size_t i = 1; i < problem.jobs.size(); ++i)
            problem.precedences.push_back({i - 1, i, longest});
        CHECK(checked(problem).makespan > 300 * longest * 24);
    }

    TEST_CASE("most jobs are done in natural order") {
        Problem problem;
        problem.workers = 2;
        problem.jobs.assign(most_jobs, job(60));
        for (std::size_t i = 1; i < problem.jobs.size(); ++i) problem.precedences.push_back({i / 2, i, 0});
        problem.precedences.erase(problem.precedences.begin());
        CHECK(checked(problem).makespan >= 60 * static_cast<Seconds>(most_jobs) / 2);
    }

    TEST_CASE("what no caller may ask for") {
        const auto refused = [](const auto& change) {
            Problem problem;
            problem.set_ups = {{0, 1}};
            problem.jobs = {job(1, 0), job(1)};
            problem.precedences = {{0, 1, 0}};
            change(problem);
            CHECK_THROWS_AS(make_timetable(problem), std::invalid_argument);
        };
        refused([](Problem& p) { p.workers = 3; });
        refused([](Problem& p) { p.workers = 0; });
        refused([](Problem& p) { p.day = 10; });
        refused([](Problem& p) { p.day = whole_day + 1; });
        refused([](Problem& p) { p.jobs[0].work = -1; });
        refused([](Problem& p) { p.jobs[0].rest = longest + 1; });
        refused([](Problem& p) { p.jobs[0].set_up = 1; });
        refused([](Problem& p) { p.jobs[0].parts = {2, 1}; });
        refused([](Problem& p) { p.set_ups[0].machine = most_jobs; });
        refused([](Problem& p) { p.set_ups[0].work = -1; });
        refused([](Problem& p) { p.precedences[0].after = 2; });
        refused([](Problem& p) { p.precedences[0].wait = -1; });
        refused([](Problem& p) { p.jobs.resize(most_jobs + 1); });
    }
}
