// Wood plans of the examples, at quick and normal effort. Target: 0.3 s of CPU each.
#include <benchmark/benchmark.h>

#include "compiler/compile.hpp"
#include "compiler/stock/plan/read_supply.hpp"

namespace rodwright {
namespace {

void plan_of_example(benchmark::State& state, const std::string& name, cutting::Effort effort) {
    const DiskWorld world;
    CompileOptions options;
    options.path = std::string(RODWRIGHT_SOURCE_DIR) + "/examples/" + name + "/" + name + ".rod";
    Compilation compiled = compile(world, options);
    if (!compiled.piece) return state.SkipWithError("the example does not compile");
    const auto supply =
        read_supply(world, LibraryFiles(world, std::nullopt), find_supply(world, options.path, std::nullopt),
                    *compiled.sources, compiled.diagnostics);
    if (!supply) return state.SkipWithError("its rack cannot be read");
    for ([[maybe_unused]] auto _ : state) {
        Diagnostics diagnostics;
        benchmark::DoNotOptimize(plan_wood(*compiled.piece, *supply, effort, diagnostics));
    }
}

BENCHMARK_CAPTURE(plan_of_example, chart_shelf_quick, "chart_shelf", cutting::Effort::quick)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(plan_of_example, chart_shelf_normal, "chart_shelf", cutting::Effort::normal)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(plan_of_example, instrument_tray_quick, "instrument_tray", cutting::Effort::quick)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(plan_of_example, instrument_tray_normal, "instrument_tray", cutting::Effort::normal)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(plan_of_example, keepers_table_quick, "keepers_table", cutting::Effort::quick)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(plan_of_example, keepers_table_normal, "keepers_table", cutting::Effort::normal)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();

}  // namespace
}  // namespace rodwright
