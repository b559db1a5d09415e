// Timetables of made-up work, of ten pieces each. Targets: 60 jobs in 30 ms, 400 jobs in 2 s. Counters, over
// the ten: how far makespans and set-ups are over their bounds, on the average and at most, in hundredths.
#include <benchmark/benchmark.h>

#include "compiler/workplan/schedule/schedule.hpp"
#include "tests/support/shop_work.hpp"

namespace rodwright::schedule {
namespace {

constexpr std::uint64_t pieces = 10;

// Shares over the bound, in hundredths.
class Excess {
  public:
    void add(double value, double bound) {
        const double excess = 100 * (value / bound - 1);
        sum_ += excess;
        most_ = std::max(most_, excess);
    }
    double average() const { return sum_ / static_cast<double>(pieces); }
    double most() const { return most_; }

  private:
    double sum_ = 0;
    double most_ = 0;
};

// Arguments: parts, workers, hours a day (0: no nights), tolerance.
void timetable(benchmark::State& state) {
    ShopWork size{static_cast<int>(state.range(0)), static_cast<std::size_t>(state.range(1)), std::nullopt};
    if (state.range(2) > 0) size.day = 3600 * state.range(2);
    std::vector<Problem> problems;
    double jobs = 0;
    for (std::uint64_t seed = 1; seed <= pieces; ++seed) {
        problems.push_back(shop_work(size, seed));
        problems.back().tolerance = static_cast<int>(state.range(3));
        jobs += static_cast<double>(problems.back().jobs.size()) / static_cast<double>(pieces);
    }
    Excess makespan, set_ups;
    for ([[maybe_unused]] auto _ : state) {
        makespan = set_ups = {};
        for (const Problem& problem : problems) {
            const Timetable found = make_timetable(problem).value();
            makespan.add(static_cast<double>(found.makespan), static_cast<double>(found.bound.makespan));
            set_ups.add(static_cast<double>(found.set_ups), static_cast<double>(found.bound.set_ups));
        }
    }
    state.counters["jobs"] = jobs;
    state.counters["each"] = benchmark::Counter(static_cast<double>(pieces * state.iterations()),
                                                benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
    state.counters["time"] = makespan.average();
    state.counters["time_most"] = makespan.most();
    state.counters["set_ups"] = set_ups.average();
    state.counters["set_ups_most"] = set_ups.most();
}

BENCHMARK(timetable)
    ->ArgNames({"parts", "workers", "day", "tolerance"})
    ->ArgsProduct({{25, 60, 180}, {1, 2}, {0, 8}, {0, 2}})
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace rodwright::schedule
