// The order of work, as the backend `steps` has it, with a box to tick at every step.
#include "backends/packet/lists/table_sheets.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

namespace {

std::string what_to_do(const Step& step) {
    std::string text = step_title(step) + "\n" + step.text;
    if (step.test_piece) text += "\nTry the setting on a spare first.";
    for (const StepReason& reason : step.after) {
        if (reason.shown)
            text += "\nAfter step " + std::to_string(reason.after + 1) + ": " + reason.because + ".";
    }
    if (!step.caution.empty()) text += "\nCaution: " + step.caution;
    return text;
}

std::string stage_heading(const StageNote& note) {
    const std::string title(stage_title(note.stage));
    return note.because.empty() ? title : title + ": now, because " + note.because;
}

drawing::Table step_table(const StepList& list) {
    drawing::Table table;
    table.columns = {{"done"}, {"step", drawing::Align::right}, {"work"}, {"parts"}, {"setting"}};
    table.columns[0].align = drawing::Align::middle;
    auto stage = list.stages.begin();
    for (std::size_t i = 0; i < list.steps.size(); ++i) {
        const Step& step = list.steps[i];
        if (i == 0 || step.stage != list.steps[i - 1].stage) {
            table.rows.push_back({{stage_heading(*stage)}, true});
            ++stage;
        }
        table.rows.push_back({{"☐", std::to_string(i + 1), what_to_do(step), step_parts(step),
                               capitalised(step_setting(step))},
                              false});
    }
    return table;
}

}  // namespace

std::vector<Draft> step_sheets(const Context& context) {
    if (context.steps.steps.empty()) return {};
    return table_sheets(
        context, {"order of work", "Order of work", {context.steps.caution}, {step_table(context.steps)}});
}

}  // namespace rodwright::packet
