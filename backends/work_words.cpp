#include "backends/work_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/workplan/data/operation_table.hpp"
#include "compiler/workplan/duration.hpp"

namespace rodwright {

std::string operation_title(const Operation& operation) {
    std::string name = plain_words(operation.name);
    if (operation.glue_up) name += fmt::format(" {}", *operation.glue_up + 1);
    return capitalised(operation.work.empty() ? name : plain_words(operation.work) + ": " + name);
}

std::vector<std::string> operation_parts(const Piece& piece, const Operation& operation) {
    if (operation.parts.size() == piece.parts.size()) return {"all parts"};
    std::vector<std::string> parts;
    for (const WorkedKind& each : operation.kinds) {
        parts.push_back(fmt::format("{} {} x {}", piece[each.kind].letter, plain_words(piece[each.kind].name),
                                    each.count));
    }
    return parts;
}

std::string cutter_words(const std::optional<ToolNeed::Alternative>& cutter, const LengthStyle& style) {
    if (!cutter) return "";
    std::vector<std::string> sizes;
    for (const auto& [name, size] : cutter->sizes)
        sizes.push_back((name.empty() ? "" : plain_words(name) + " ") + format_quantity(size, style));
    return sizes.empty() ? plain_words(cutter->tool) : plain_words(cutter->tool) + " " + joined(sizes);
}

std::string settings_words(const std::vector<StepSetting>& settings, const LengthStyle& style) {
    std::vector<std::string> words;
    for (const StepSetting& setting : settings)
        words.push_back(plain_words(setting.name) + " " + read_out(setting.value, style));
    return joined(words);
}

std::string machine_words(const std::string& machine, const std::optional<ToolNeed::Alternative>& cutter,
                          const std::vector<StepSetting>& settings, const LengthStyle& style) {
    std::string words = plain_words(machine);
    if (cutter) words += " with " + cutter_words(cutter, style);
    if (!settings.empty()) words += ": " + settings_words(settings, style);
    return words;
}

Seconds time_at_work(const Operation& operation) {
    const bool stands = operation.set_up && !operation.time.sets_up;
    return std::max<Seconds>(60, (stands ? 0 : operation.labour.set_up) + operation.labour.work);
}

std::string time_words(const Operation& operation) {
    std::string words = "about " + duration_words(time_at_work(operation));
    if (operation.wait > 0) words += ", then wait " + duration_words(operation.wait);
    return words;
}

static std::string set_up_count_words(const WorkSums& sums) {
    if (sums.set_ups == 0) return "No machine has to be set up.";
    const std::string made = counted(sums.set_ups, "set-up") + " of machines; ";
    if (sums.set_ups == sums.set_ups_bound) return made + "fewer will not do.";
    return made + fmt::format("{} are different and have to be made.", sums.set_ups_bound);
}

std::vector<std::string> sums_words(const WorkPlan& plan) {
    const WorkSums& sums = plan.sums;
    std::vector<std::string> words;
    words.push_back(
        fmt::format("About {} of work for {}; at {} a day it is {} from the first cut to the end, glue and "
                    "finish drying included. No order takes less than {} ({}).",
                    duration_words(sums.hands), sums.workers == 1 ? "one" : "two", duration_words(sums.day),
                    duration_words(sums.makespan), duration_words(sums.makespan_bound), sums.bound_reason));
    words.push_back(set_up_count_words(sums));
    if (sums.assumed)
        words.emplace_back(
            "Times are first guesses without a source; put your own into operations.yaml beside the design.");
    return words;
}

std::string set_up_words(const WorkPlan& plan, const SetUp& set_up, const LengthStyle& style) {
    if (!set_up.settings.empty()) return settings_words(set_up.settings, style);
    return "for: " + plain_words(plan.operations[set_up.operations.front()].name);
}

std::vector<std::string> arithmetic_words(const std::vector<StepSetting>& settings,
                                          const LengthStyle& style) {
    std::vector<std::string> words;
    for (const StepSetting& setting : settings) {
        const std::string sum = read_out(setting.worked_out, style);
        if (!sum.empty())
            words.push_back(
                fmt::format("{} {} = {}", plain_words(setting.name), read_out(setting.value, style), sum));
    }
    return words;
}

bool has_picture(const WorkPlan& plan, const Operation& operation) {
    return operation.glue_up && !plan.glue_ups[*operation.glue_up].motions.front().goes.empty();
}

std::string stage_heading(const WorkPlan& plan, std::size_t operation) {
    const Stage stage = plan.operations[operation].stage;
    const std::string title(stage_title(stage));
    const auto first = std::ranges::find(plan.operations, stage, &Operation::stage);
    if (first != plan.operations.begin() + static_cast<std::ptrdiff_t>(operation))
        return title + ", continued";
    const auto note = std::ranges::find(plan.stages, stage, &StageNote::stage);
    return note->because.empty() ? title : title + ": now, because " + note->because;
}

}  // namespace rodwright
