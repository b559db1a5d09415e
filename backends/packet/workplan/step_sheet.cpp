// The order of work with a box to tick at every step.
#include "backends/packet/lists/table_sheets.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/workplan/unbroken.hpp"
#include "backends/work_words.hpp"

namespace rodwright::packet {

namespace {

std::string what_to_do(const Operation& step, const WorkPlan& plan, const LengthStyle& style) {
    std::string text = operation_title(step);
    const bool pictured = has_picture(plan, step);
    // Said beside its picture.
    if (pictured) text += "\nAs its picture on the sheets of glue-ups shows.";
    for (const Phrase& line : step.text) {
        if (!pictured) text += "\n" + read_out(line, style);
    }
    for (const WorkReason& reason : step.after) {
        if (reason.shown)
            text += "\nAfter step " + std::to_string(reason.after + 1) + ": " +
                    read_out(reason.because, style) + ".";
    }
    if (const std::string caution = read_out(step.caution, style); !caution.empty())
        text += "\nCaution: " + caution;
    return text;
}

std::string setting(const Operation& step, const LengthStyle& style) {
    std::string text = capitalised(machine_words(step.machine, step.cutter, step.settings, style));
    if (step.set_up)
        text += "\nset-up " + std::to_string(*step.set_up + 1) + (step.time.sets_up ? "" : ", as it stands");
    return text;
}

// A line for the work and one for the wait.
std::string time_in_table(const Operation& step) {
    const std::string work = unbroken_duration(time_at_work(step));
    return step.wait > 0 ? work + "\nwait " + unbroken_duration(step.wait) : work;
}

std::string parts_in_table(const Piece& piece, const Operation& step) {
    return joined(unbroken_parts(piece, step), "\n");
}

drawing::Table step_table(const Piece& piece, const WorkPlan& plan) {
    drawing::Table table;
    table.columns = {
        {"done", drawing::Align::middle}, {"step", drawing::Align::right}, {"work"}, {"parts"}, {"setting"},
        {"time", drawing::Align::right}};
    if (!plan.done.empty()) table.rows.push_back({{"Done"}, true});
    for (const Operation& step : plan.done)
        table.rows.push_back({{"☑", "", operation_title(step), parts_in_table(piece, step), "", ""}, false});
    for (std::size_t i = 0; i < plan.operations.size(); ++i) {
        const Operation& step = plan.operations[i];
        if (i == 0 || step.stage != plan.operations[i - 1].stage)
            table.rows.push_back({{stage_heading(plan, i)}, true});
        table.rows.push_back({{"☐", std::to_string(i + 1), what_to_do(step, plan, piece.style),
                               parts_in_table(piece, step), setting(step, piece.style), time_in_table(step)},
                              false});
    }
    return table;
}

}  // namespace

std::vector<Draft> step_sheets(const Context& context) {
    const WorkPlan* plan = context.input.work;
    if (plan == nullptr || plan->operations.empty()) return {};
    std::vector<std::string> preface = sums_words(*plan);
    preface.push_back(plan->caution);
    return table_sheets(
        context, {"order of work", "Order of work", std::move(preface), {step_table(context.piece, *plan)}});
}

}  // namespace rodwright::packet
