// What has to be bought, and what the wood plan says besides.
#include <fmt/format.h>

#include <algorithm>

#include "backends/boards/board_words.hpp"
#include "backends/cutlist/cells.hpp"
#include "backends/packet/lists/table_sheets.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

namespace {

using drawing::Align;

std::string price_cell(const WoodPlan& plan, const Rational& price) {
    return fmt::format("{:.2f} {}", price.get_d(), plan.money);
}

bool comes_of_rod(const WoodPlan& plan, const HardwareRow& row) {
    return std::ranges::any_of(plan.purchases, [&](const Purchase& purchase) {
        return std::ranges::find(purchase.supplies, row.note) != purchase.supplies.end();
    });
}

// Where no wood is to be bought there are no board feet and no prices.
void drop_empty_columns(drawing::Table& table) {
    for (std::size_t column = table.columns.size(); column-- > 0;) {
        const auto says = [&](const drawing::Row& row) { return !row.heading && !row.cells[column].empty(); };
        if (std::ranges::any_of(table.rows, says)) continue;
        const auto at = static_cast<std::ptrdiff_t>(column);
        table.columns.erase(table.columns.begin() + at);
        for (drawing::Row& row : table.rows) {
            if (!row.heading) row.cells.erase(row.cells.begin() + at);
        }
    }
}

drawing::Table buying_table(const Context& context, const WoodPlan& plan) {
    drawing::Table table;
    table.columns = {
        {"count", Align::right}, {"what"}, {"board feet", Align::right}, {"price", Align::right}};
    const auto heading = [&](const std::string& text) { table.rows.push_back({{text}, true}); };
    if (!plan.purchases.empty()) heading("Wood");
    for (const Purchase& purchase : plan.purchases) {
        const std::string feet =
            purchase.board_feet > 0 ? fmt::format("{:.1f}", purchase.board_feet.get_d()) : "";
        table.rows.push_back(
            {{std::to_string(purchase.count), purchase.text, feet, price_cell(plan, purchase.price)}, false});
    }
    if (!plan.by_the_foot.empty()) heading("Or in place of these boards, in random widths by the board foot");
    for (const LumberByTheFoot& lumber : plan.by_the_foot) {
        table.rows.push_back(
            {{"", lumber.text + ": " + added_words(lumber), fmt::format("{:.1f}", lumber.board_feet.get_d()),
              price_cell(plan, lumber.price)},
             false});
    }
    const CutList list = make_cut_list(context.piece);
    if (!list.hardware.empty()) heading("Hardware");
    for (const HardwareRow& row : list.hardware) {
        const std::vector<std::string> cells = hardware_cells(row, list.style);
        std::string what = cells[2].empty() ? cells[1] : cells[1] + ", " + cells[2];
        if (comes_of_rod(plan, row)) what += ": from the rods above";
        table.rows.push_back({{cells[0], what, "", ""}, false});
    }
    if (!context.piece.finishes.empty()) heading("Finish");
    for (const Finish& finish : context.piece.finishes) {
        const std::string coats = counted(static_cast<std::size_t>(finish.coats), "coat");
        table.rows.push_back({{"", plain_words(finish.name) + ", for " + coats, "", ""}, false});
    }
    return table;
}

}  // namespace

std::vector<Draft> buying_sheets(const Context& context) {
    const WoodPlan* plan = context.input.wood;
    if (plan == nullptr || !plan->planned) return {};
    std::vector<std::string> preface = plan_remarks(*plan, context.piece.style);
    if (plan->purchases.empty() && plan->complete()) {
        preface.insert(preface.begin(), "The wood at hand is enough; none has to be bought.");
    }
    TablePages pages{"buying list", "Buying list", std::move(preface), {buying_table(context, *plan)}};
    if (pages.tables.front().rows.empty())
        pages.tables.front().rows.push_back({{"", "nothing", "", ""}, false});
    drop_empty_columns(pages.tables.front());
    return table_sheets(context, pages);
}

}  // namespace rodwright::packet
