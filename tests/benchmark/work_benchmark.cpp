// The whole plan of work beyond the solids: surfaces, how the piece comes apart, glue-ups, order, timetable.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/compile.hpp"
#include "compiler/workplan/plan_work.hpp"
#include "tests/support/generate.hpp"

using namespace rodwright;

namespace {

Compilation compiled_design(std::string text) {
    const MemoryWorld world({{"design.rod", std::move(text)}});
    return compile(world, {"design.rod", {}, {}, {}});
}

void work_of(benchmark::State& state, const std::string& text) {
    const Compilation compilation = compiled_design(text);
    if (!compilation.piece) return state.SkipWithError("the design has errors");
    const Piece& piece = *compilation.piece;
    Diagnostics diagnostics;
    SolidStore solids(piece, diagnostics);
    solids.placed();
    std::size_t operations = 0;
    for (auto _ : state) {
        const std::optional<WorkPlan> plan =
            plan_work(piece, embedded_work_data(), assembly_facts(piece, solids), {}, diagnostics);
        operations = plan ? plan->operations.size() : 0;
    }
    state.counters["parts"] = static_cast<double>(piece.parts.size());
    state.counters["operations"] = static_cast<double>(operations);
}

// Target: 300 ms.
void work_keepers_table(benchmark::State& state) {
    std::ifstream file(std::string(RODWRIGHT_SOURCE_DIR) + "/examples/keepers_table/keepers_table.rod",
                       std::ios::binary);
    work_of(state, {std::istreambuf_iterator<char>(file), {}});
}
BENCHMARK(work_keepers_table)->Unit(benchmark::kMillisecond)->UseRealTime();

// Target: 300 parts in 10 s.
void work_store(benchmark::State& state) {
    work_of(state, testing::store_text(static_cast<std::size_t>(state.range(0))));
}
BENCHMARK(work_store)->Arg(1)->Arg(3)->Arg(6)->Iterations(1)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
