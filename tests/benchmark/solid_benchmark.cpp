// Building solids and removing hidden lines, over frames of legs with mortises and rails with tenons.
#include <benchmark/benchmark.h>

#include "compiler/solid/solid_kernel.hpp"

using namespace rodwright;

namespace {

constexpr Direction plus_x{Axis::wide, true};
constexpr Direction plus_y{Axis::deep, true};
constexpr Direction plus_z{Axis::tall, true};
constexpr Direction minus_x{Axis::wide, false};
constexpr Direction minus_y{Axis::deep, false};

Feature box_feature(FeatureOp op, const Frame& frame, const Rational& u, const Rational& v,
                    const Rational& length) {
    Feature feature;
    feature.op = op;
    feature.body = Body{BodyForm::box, frame, u, v, length, {}};
    return feature;
}

// A rail with a tenon at each end, its long edges rounded.
Kind make_rail() {
    Kind kind;
    kind.name = "rail";
    kind.size = Vector{{500, 60, 20}};
    kind.features = {
        box_feature(FeatureOp::leave, {Vector{{500, 30, 10}}, plus_z, plus_y, plus_x}, 7, 45, 20),
        box_feature(FeatureOp::leave, {Vector{{0, 30, 10}}, plus_z, plus_y, minus_x}, 7, 45, 20)};
    Feature round;
    round.op = FeatureOp::blend;
    round.edges = {{Face::front, Face::bottom},
                   {Face::front, Face::top},
                   {Face::back, Face::bottom},
                   {Face::back, Face::top}};
    round.size = 2;
    kind.features.push_back(round);
    return kind;
}

// A leg with `mortises` of them down one face.
Kind make_leg(int mortises) {
    Kind kind;
    kind.name = "leg";
    kind.size = Vector{{100 * mortises, 40, 40}};
    for (int i = 0; i < mortises; ++i) {
        kind.features.push_back(box_feature(
            FeatureOp::remove, {Vector{{100 * i + 50, 40, 20}}, plus_x, plus_z, minus_y}, 45, 7, 20));
    }
    return kind;
}

// A ladder: two legs, and rails between them.
Piece make_ladder(int rails) {
    Piece piece;
    piece.kinds = {make_leg(rails), make_rail()};
    Part leg;
    leg.kind = KindId{0};
    piece.parts = {leg, leg};
    piece.parts[1].placement = {Turn{{plus_x, minus_y, Direction{Axis::tall, false}}}, Vector{{0, 580, 40}}};
    for (int i = 0; i < rails; ++i) {
        Part rail;
        rail.kind = KindId{1};
        rail.placement = {Turn{{minus_y, plus_x, plus_z}}, Vector{{100 * i + 80, 40, 10}}};
        piece.parts.push_back(rail);
    }
    return piece;
}

void build_kinds(benchmark::State& state) {
    const Piece piece = make_ladder(static_cast<int>(state.range(0)) - 2);
    for (auto _ : state) {
        Diagnostics diagnostics;
        SolidStore store(piece, diagnostics);
        benchmark::DoNotOptimize(store.placed());
        if (!diagnostics.list().empty()) state.SkipWithError(diagnostics.list().front().message.c_str());
    }
}

void hidden_lines(benchmark::State& state, View from) {
    const Piece piece = make_ladder(static_cast<int>(state.range(0)) - 2);
    Diagnostics diagnostics;
    SolidStore store(piece, diagnostics);
    const std::vector<PlacedSolid> placed = store.placed();
    std::string error;
    const SolidKernel* kernel = load_solid_kernel(error);  // the store's remembers
    if (kernel == nullptr) return state.SkipWithError(error.c_str());
    for (auto _ : state) {
        const std::vector<ViewLine> lines = kernel->view(placed, from, true);
        state.counters["lines"] = static_cast<double>(lines.size());
    }
}

const View isometric{{-1, -1, 1}, {0, 0, 1}};
const View above{{0, 0, 1}, {0, 1, 0}};

}  // namespace

// The argument is the number of parts.
BENCHMARK(build_kinds)->Arg(25)->Arg(100)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(hidden_lines, above, above)->Arg(25)->Arg(100)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(hidden_lines, isometric, isometric)->Arg(25)->Arg(100)->Unit(benchmark::kMillisecond);
