// Strength of a piece whose solids are there. Targets: 0.3 s for the Keeper's table, 4 s for 300 parts.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include "compiler/assembly/placed_meshes.hpp"
#include "compiler/check/strength/assess.hpp"
#include "compiler/compile.hpp"

namespace rodwright {
namespace {

void assess(benchmark::State& state, const World& world, const std::string& path) {
    CompileOptions options;
    options.path = path;
    Compilation compiled = compile(world, options);
    if (!compiled.piece) return state.SkipWithError("the design does not compile");
    SolidStore solids(*compiled.piece, compiled.diagnostics);
    const std::vector<Mesh> meshes = placed_meshes(*compiled.piece, solids);
    for ([[maybe_unused]] auto _ : state) {
        Diagnostics diagnostics;
        benchmark::DoNotOptimize(strength::assess(*compiled.piece, meshes, diagnostics));
    }
    state.counters["parts"] = static_cast<double>(compiled.piece->parts.size());
}

void strength_of_table(benchmark::State& state) {
    assess(state, DiskWorld(),
           std::string(RODWRIGHT_SOURCE_DIR) + "/examples/keepers_table/keepers_table.rod");
}
BENCHMARK(strength_of_table)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

// A long bench: two stretchers that stand on the floor, a slatted seat upon posts.
void strength_of_slats(benchmark::State& state) {
    const std::string text = fmt::format(R"(piece "Bench" {{
    unit mm to 1
    let slats = {}
    wide = slats * 50mm + 100mm; deep = 400mm; tall = 450mm
    wood ash = white_ash flat
    part leg of ash, handed wide deep {{
        grain tall
        left = piece.left; wide = 50mm
        front = piece.front; deep = 50mm
        bottom = piece.bottom; top = piece.top
    }}
    part rail of ash, handed deep {{
        grain wide
        left = leg[left].right; right = leg[right].left
        front = leg.front; deep = 40mm
        top = piece.top; tall = 200mm
    }}
    part slat[slats] of ash {{
        grain deep
        front = rail[front].back; back = rail[back].front
        wide = 40mm; tall = 20mm
        top = piece.top
    }}
    space slat along wide from leg[left].right to leg[right].left {{ ends = 5mm }}
    join rail.left, rail.right to leg with mortise_and_tenon
    join slat.front, slat.back to rail with mortise_and_tenon(long = 20mm, thick = 8mm)
    use seat for 3 on slat
}}
)",
                                         state.range(0));
    const MemoryWorld world(std::map<std::string, std::string>{{"bench.rod", text}});
    assess(state, world, "bench.rod");
}
BENCHMARK(strength_of_slats)->Arg(74)->Arg(294)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

}  // namespace
}  // namespace rodwright
