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

const bool registered = [] {
    for (const std::string name : {"chart_shelf", "instrument_tray", "keepers_table"}) {
        for (const bool quick : {true, false}) {
            benchmark::RegisterBenchmark(("plan/" + name + (quick ? "/quick" : "/normal")).c_str(),
                                         plan_of_example, name,
                                         quick ? cutting::Effort::quick : cutting::Effort::normal)
                ->Unit(benchmark::kMillisecond)
                ->MeasureProcessCPUTime();
        }
    }
    return true;
}();

}  // namespace
}  // namespace rodwright
