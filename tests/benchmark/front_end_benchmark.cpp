// Text to graph on generated stores of 250 to 4000 parts. Targets: growth no faster than n^1.15, 4000 parts
// in less than 2 s, peak memory below 400 MB.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <map>

#include "compiler/compile.hpp"
#include "tests/support/generate.hpp"

namespace rodwright {
namespace {

constexpr std::int64_t least_parts = 250;

// Of the whole process so far, so that it only says something in a run of its own; in MB.
double peak_memory() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

// The exponent of growth since the smallest piece, from CPU times.
double exponent(std::int64_t parts, double seconds) {
    static std::map<std::int64_t, double> times;
    times[parts] = seconds;
    if (parts == least_parts || !times.contains(least_parts)) return 1;
    return std::log(seconds / times[least_parts]) /
           std::log(static_cast<double>(parts) / static_cast<double>(least_parts));
}

void text_to_graph(benchmark::State& state) {
    const std::int64_t parts = state.range(0);
    const auto bays = static_cast<std::size_t>(parts) / testing::bay_parts;
    const MemoryWorld world({{"store.rod", testing::store_text(bays)}});
    CompileOptions options;
    options.path = "store.rod";
    std::size_t joints = 0;
    const std::clock_t start = std::clock();
    for ([[maybe_unused]] auto _ : state) {
        const Compilation compiled = compile(world, options);
        if (!compiled.piece || compiled.piece->parts.size() != bays * testing::bay_parts) {
            state.SkipWithError("the store does not compile");
            return;
        }
        joints = compiled.piece->joints.size();
    }
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC /
                           static_cast<double>(std::max<std::int64_t>(1, state.iterations()));
    state.counters["joints"] = static_cast<double>(joints);
    state.counters["peak_MB"] = peak_memory();
    state.counters["exponent"] = exponent(parts, seconds);
    state.SetComplexityN(parts);
}
BENCHMARK(text_to_graph)
    ->Arg(least_parts)
    ->Arg(500)
    ->Arg(1000)
    ->Arg(2000)
    ->Arg(4000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity();

}  // namespace
}  // namespace rodwright
