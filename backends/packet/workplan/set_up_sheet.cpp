// Each setting of a machine once, with all that is done at it.
#include "backends/packet/lists/table_sheets.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/workplan/unbroken.hpp"
#include "backends/work_words.hpp"

namespace rodwright::packet {

namespace {

// "24 Mortise and tenon: cut mortise (A1 leg x 2, A2 leg x 2)", a line each.
std::string passes(const Piece& piece, const WorkPlan& plan, const SetUp& set_up) {
    std::vector<std::string> lines;
    for (const std::size_t i : set_up.operations) {
        const Operation& step = plan.operations[i];
        lines.push_back(std::to_string(i + 1) + "\u00a0 " + operation_title(step) + " (" +
                        joined(unbroken_parts(piece, step)) + ")");
    }
    return joined(lines, "\n");
}

drawing::Table set_up_table(const Piece& piece, const WorkPlan& plan) {
    drawing::Table table;
    table.columns = {{"no.", drawing::Align::right},
                     {"machine and cutter"},
                     {"setting"},
                     {"worked out"},
                     {"try"},
                     {"steps and parts"},
                     {"time", drawing::Align::right, true}};
    for (std::size_t i = 0; i < plan.set_ups.size(); ++i) {
        const SetUp& set_up = plan.set_ups[i];
        table.rows.push_back({{std::to_string(i + 1),
                               capitalised(machine_words(set_up.machine, set_up.cutter, {}, piece.style)),
                               set_up_words(plan, set_up, piece.style),
                               joined(arithmetic_words(set_up.settings, piece.style), "\n"),
                               set_up.test_piece ? "on a spare" : "", passes(piece, plan, set_up),
                               unbroken_duration(set_up.time)},
                              false});
    }
    return table;
}

}  // namespace

std::vector<Draft> set_up_sheets(const Context& context) {
    const WorkPlan* plan = context.input.work;
    if (plan == nullptr || plan->set_ups.empty()) return {};
    return table_sheets(
        context, {"set-ups",
                  "Set-ups",
                  {"Each setting of a machine once, in the order of work, with every part that passes. Sizes "
                   "are from the reference face or end that the step names; settings are made with a "
                   "gauge or the mate itself, not by the machine's scale."},
                  {set_up_table(context.piece, *plan)}});
}

}  // namespace rodwright::packet
