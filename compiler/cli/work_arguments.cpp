#include "compiler/cli/work_arguments.hpp"

#include <fmt/format.h>

#include "compiler/cli/command.hpp"
#include "compiler/evaluate/design.hpp"

namespace rodwright {
namespace {

constexpr Seconds shortest_day = 3600;
constexpr Seconds longest_day = 24 * 3600;

// Empty, and reported, if the words are no such time.
std::optional<Seconds> day_of(const std::string& words, Diagnostics& diagnostics) {
    const std::optional<Quantity> time = parse_quantity(words);
    const bool is_time = time && time->dimension == Dimension::of(Base::time);
    if (is_time && time->value >= shortest_day && time->value <= longest_day)
        return static_cast<Seconds>(time->value.get_d());
    diagnostics.add(
        diagnose(Code::bad_command, {}, fmt::format("`--day {}`: from 1 h to 24 h are worked a day", words))
            .hint("write it with its unit: --day 8h"));
    return std::nullopt;
}

}  // namespace

void add_work_options(CLI::App& command, WorkArguments& arguments) {
    command
        .add_option("--workers", arguments.workers, "How many work at the same time (as shop.yaml has it)")
        ->type_name("1|2")
        ->check(CLI::Range(1, 2));
    command
        .add_option("--day", arguments.day,
                    "How long is worked a day (as shop.yaml has it); 24h: a clock without nights")
        ->type_name("TIME");
    command.add_flag("--in-stages", arguments.in_stages,
                     "Finish each stage of the work on all parts before the next begins");
}

std::optional<WorkSetting> work_setting(const DesignArguments& design, const WorkArguments& arguments,
                                        SourceManager& sources, Diagnostics& diagnostics) {
    const DiskWorld world;
    const LibraryFiles library(world, if_given(design.stdlib_folder));
    std::optional<WorkData> data = read_work_data(world, library, design.file, sources, diagnostics);
    if (!data) return std::nullopt;
    WorkOptions options;
    options.day = static_cast<Seconds>(data->shop.day().get_d());
    if (!arguments.day.empty()) {
        const std::optional<Seconds> day = day_of(arguments.day, diagnostics);
        if (!day) return std::nullopt;
        options.day = *day;
    }
    options.workers =
        static_cast<std::size_t>(arguments.workers == 0 ? data->shop.workers() : arguments.workers);
    options.in_stages = arguments.in_stages;
    return WorkSetting{std::move(*data), options};
}

}  // namespace rodwright
