// Text to tree, beside what PEGTL alone needs to say whether the same text matches the same rules, and beside
// the way back from tree to text.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <string>

#include "grammar/parse.hpp"
#include "grammar/print.hpp"
#include "grammar/rules.hpp"

namespace rodwright {
namespace {

constexpr std::size_t text_bytes = 5'000'000;

// A part, its join and what makers write around them.
std::string part_text(std::size_t number) {
    return fmt::format(R"rod(
  part rail{0} of ash, handed wide {{          -- one of many
    grain deep
    front = leg[front].back;  back = leg[back].front
    left  = leg.left + reveal
    wide  = {1}/64";  tall = 4-1/2"
    top   = leg.top - {0} * (gap + {1}mm) / 2
    taper(to = 1-1/8", from_top = 5") on inside faces
    round(1/8") on long edges
  }}
  join rail{0}.front to leg with mortise_and_tenon(long = 1-1/8", haunch = 3/8")
  require rail{0}.wide >= 1/2" and rail{0}.tall < 6" "rail {0} is out of its bounds"
)rod",
                       number, 1 + number % 63);
}

std::string piece_text() {
    std::string text = "piece \"A rack of the weather station\" {\n  unit in to 1/32\n";
    for (std::size_t i = 0; text.size() < text_bytes; ++i) text += part_text(i);
    return text + "}\n";
}

const std::string& text() {
    static const std::string made = piece_text();
    return made;
}

void report(benchmark::State& state) {
    state.SetBytesProcessed(static_cast<std::int64_t>(state.iterations()) *
                            static_cast<std::int64_t>(text().size()));
}

void parse_to_tree(benchmark::State& state) {
    SourceManager sources;
    const FileId file = sources.add("rack.rod", text());
    for ([[maybe_unused]] auto _ : state) {
        Diagnostics diagnostics;
        const Tree tree = parse(sources, file, diagnostics);
        if (!diagnostics.ok()) state.SkipWithError("the text has mistakes");
        benchmark::DoNotOptimize(tree.nodes().data());
    }
    report(state);
}
BENCHMARK(parse_to_tree)->Unit(benchmark::kMillisecond);

void match_only(benchmark::State& state) {
    for ([[maybe_unused]] auto _ : state) {
        rules::Input in(text().data(), text().data() + text().size(), "");
        if (!tao::pegtl::parse<rules::file>(in)) state.SkipWithError("the text does not match");
    }
    report(state);
}
BENCHMARK(match_only)->Unit(benchmark::kMillisecond);

void print_tree(benchmark::State& state) {
    SourceManager sources;
    const FileId file = sources.add("rack.rod", text());
    Diagnostics diagnostics;
    const Tree tree = parse(sources, file, diagnostics);
    for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(print(tree));
    report(state);
}
BENCHMARK(print_tree)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace rodwright
