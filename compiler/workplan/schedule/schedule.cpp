#include "compiler/workplan/schedule/schedule.hpp"

#include <algorithm>
#include <stdexcept>

#include "compiler/workplan/schedule/beam.hpp"
#include "compiler/workplan/schedule/bound.hpp"
#include "compiler/workplan/schedule/chain.hpp"
#include "compiler/workplan/schedule/improve.hpp"
#include "compiler/workplan/schedule/settle.hpp"

namespace rodwright::schedule {
namespace {

// All orders of so few tasks are looked at: so wide a beam has room for all that differ.
constexpr std::size_t exhausted_tasks = 9;
constexpr std::size_t exhausting_width = 30'000;
// Tasks placed in all moves together, about a tenth of a microsecond each.
constexpr std::size_t most_placed = 15'000'000;

void expect(bool right, const char* what) {
    if (!right) throw std::invalid_argument(what);
}

void expect_duration(Seconds seconds) {
    expect(seconds >= 0 && seconds <= longest, "schedule: a time is negative or longer than `longest`");
}

void expect_valid(const Problem& problem) {
    expect(problem.workers == 1 || problem.workers == 2, "schedule: one or two workers");
    expect(problem.jobs.size() <= most_jobs && problem.set_ups.size() <= most_jobs,
           "schedule: too many jobs or set-ups");
    expect(problem.tolerance >= 0 && problem.tolerance <= 100, "schedule: hundredths of tolerance");
    if (problem.day) {
        expect(*problem.day >= shortest_day && *problem.day <= whole_day, "schedule: hours worked a day");
    }
    for (const SetUp& set_up : problem.set_ups) {
        expect(set_up.machine < most_jobs, "schedule: number of a machine");
        expect_duration(set_up.work);
    }
    for (const Job& job : problem.jobs) {
        expect(!job.set_up || *job.set_up < problem.set_ups.size(), "schedule: number of a set-up");
        expect(std::is_sorted(job.parts.begin(), job.parts.end()), "schedule: parts ascend");
        expect_duration(job.work);
        expect_duration(job.rest);
    }
    for (const Precedence& p : problem.precedences) {
        expect(p.before < problem.jobs.size() && p.after < problem.jobs.size(), "schedule: number of a job");
        expect_duration(p.wait);
    }
}

std::vector<std::size_t> search(const Network& network, Seconds enough, Effort effort) {
    if (network.size() == 0 || network.size() > searched_tasks) return natural_order(network);
    const bool few = network.size() <= exhausted_tasks;
    Found found =
        search_beam(network, enough, few ? exhausting_width : std::max(effort.width, std::size_t{1}));
    if (found.complete) return found.order;
    const std::size_t moves = std::min(effort.moves * network.size(), most_placed / network.size());
    found = improve(network, enough, std::move(found), moves);
    return settle(network, enough, std::move(found.order));
}

Timetable timetable_of(const Network& network, const std::vector<std::size_t>& order) {
    Timetable timetable;
    Progress progress(network, 0);
    for (const std::size_t task : order) {
        const Placing p = progress.place(network, task);
        progress.take(network, p);
        timetable.entries.push_back({network[task].job, p.worker, p.begin, p.work_begins, p.end, p.sets_up});
    }
    std::stable_sort(timetable.entries.begin(), timetable.entries.end(),
                     [](const Entry& a, const Entry& b) { return a.begin < b.begin; });
    const Figures& figures = progress.figures();
    timetable.makespan = figures.makespan;
    timetable.set_ups = figures.set_ups;
    timetable.handling = static_cast<std::size_t>(figures.handling);
    return timetable;
}

}  // namespace

std::optional<Timetable> make_timetable(const Problem& problem, Effort effort) {
    expect_valid(problem);
    std::optional<Network> network = Network::make(problem);
    if (!network) return std::nullopt;
    Bound bound = lower_bound(*network);
    const Seconds enough = bound.makespan + bound.makespan * problem.tolerance / 100;
    std::vector<Seconds> tails = latest_ends(*network, enough);
    for (Seconds& tail : tails) tail = enough - tail;
    network->set_tails(std::move(tails));
    Timetable timetable = timetable_of(*network, search(*network, enough, effort));
    timetable.bound = std::move(bound);
    return timetable;
}

}  // namespace rodwright::schedule
