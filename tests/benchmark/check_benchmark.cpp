// The checks: over a table, over stores of hundreds of parts, and the search for parts that may overlap.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <random>

#include "compiler/assembly/placed_meshes.hpp"
#include "compiler/assembly/shared_wood.hpp"
#include "compiler/check/movement/held_spans.hpp"
#include "compiler/check/run_checks.hpp"
#include "compiler/compile.hpp"
#include "tests/support/generate.hpp"

using namespace rodwright;

namespace {

Compilation compiled(std::string text) {
    const MemoryWorld world({{"design.rod", std::move(text)}});
    return compile(world, {"design.rod", {}, {}, {}});
}

std::string keepers_table() {
    std::ifstream file(std::string(RODWRIGHT_SOURCE_DIR) + "/examples/keepers_table/keepers_table.rod",
                       std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void all_checks_of(benchmark::State& state, const std::string& text) {
    const Compilation compilation = compiled(text);
    if (!compilation.piece) return state.SkipWithError("the design has errors");
    for (auto _ : state) {
        Diagnostics diagnostics;
        SolidStore solids(*compilation.piece, diagnostics);
        benchmark::DoNotOptimize(run_checks(*compilation.piece, solids));
    }
    state.counters["parts"] = static_cast<double>(compilation.piece->parts.size());
}

// Solids included. Target, with reading and a cold start: 700 ms.
void check_keepers_table(benchmark::State& state) {
    all_checks_of(state, keepers_table());
}
BENCHMARK(check_keepers_table)->Unit(benchmark::kMillisecond)->UseRealTime();

// Target: 300 parts in 8 s.
void check_store(benchmark::State& state) {
    all_checks_of(state, testing::store_text(static_cast<std::size_t>(state.range(0))));
}
BENCHMARK(check_store)->Arg(1)->Arg(3)->Arg(6)->Iterations(1)->Unit(benchmark::kMillisecond)->UseRealTime();

// Boxes in a space that grows with them, so that each has as many neighbours. Target: no more than n log n.
void find_near_pairs(benchmark::State& state) {
    const auto count = static_cast<std::size_t>(state.range(0));
    std::mt19937 random(1);  // of the standard: the same numbers everywhere
    const double room = 40 * std::cbrt(static_cast<double>(count));
    std::vector<Mesh> meshes;
    for (std::size_t i = 0; i < count; ++i) {
        Point3 low{};
        for (double& coordinate : low) coordinate = room * static_cast<double>(random()) / 4294967296.0;
        meshes.push_back(
            {Triangle{{low, {low[0] + 30, low[1], low[2]}, {low[0], low[1] + 20, low[2] + 40}}, {}, 0}});
    }
    for (auto _ : state) benchmark::DoNotOptimize(near_pairs(meshes, 0));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(find_near_pairs)
    ->RangeMultiplier(4)
    ->Range(256, 65536)
    ->Complexity(benchmark::oNLogN)
    ->Unit(benchmark::kMillisecond);

void find_held_spans(benchmark::State& state) {
    const Compilation compilation = compiled(testing::store_text(static_cast<std::size_t>(state.range(0))));
    if (!compilation.piece) return state.SkipWithError("the design has errors");
    const Seasons seasons = seasons_of(compilation.piece->climate);
    for (auto _ : state) benchmark::DoNotOptimize(held_spans(*compilation.piece, seasons));
    state.counters["parts"] = static_cast<double>(compilation.piece->parts.size());
}
BENCHMARK(find_held_spans)->Arg(1)->Arg(3)->Arg(6)->Unit(benchmark::kMillisecond);

}  // namespace
