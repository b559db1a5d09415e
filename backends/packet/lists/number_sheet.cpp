// What the checks worked out: every number with its limit, how it was found, from where, and what was
// assumed.
#include <algorithm>

#include "backends/packet/lists/table_sheets.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/words.hpp"
#include "compiler/check/findings.hpp"
#include "compiler/check/words.hpp"

namespace rodwright::packet {

namespace {

using drawing::Align;

// Sources and assumptions that many numbers share, each said once under a number of its own.
class Footnotes {
  public:
    std::string mark(const std::string& text) {
        const auto known = std::ranges::find(texts_, text);
        const auto index = static_cast<std::size_t>(known - texts_.begin());
        if (known == texts_.end()) texts_.push_back(text);
        return std::to_string(index + 1);
    }
    const std::vector<std::string>& texts() const { return texts_; }

  private:
    std::vector<std::string> texts_;
};

std::string inputs_text(const Number& number, const LengthStyle& style) {
    std::string text;
    for (const auto& [name, value] : number.inputs)
        text += (text.empty() ? "" : ", ") + name + " " + format_quantity(value, style);
    return capitalised(text);
}

std::string notes_text(const Number& number, Footnotes& notes) {
    std::string text = notes.mark(capitalised(number.formula) + ". Source: " + number.source);
    for (const std::string& each : number.assumptions) text += ", " + notes.mark("Assumed: " + each);
    return text;
}

// Names stand between backquotes in messages; on paper they are words like the rest.
std::string on_paper(std::string text) {
    std::erase(text, '`');
    return plain_words(text);
}

drawing::Table number_table(const std::vector<Number>& numbers, const LengthStyle& style, Footnotes& notes) {
    drawing::Table table;
    table.columns = {
        {"what"}, {"value", Align::right, true}, {"limit", Align::right, true}, {"from"}, {"notes"}};
    std::string check;
    for (const Number& number : numbers) {
        if (number.check != check) table.rows.push_back({{capitalised(number.check)}, true});
        check = number.check;
        table.rows.push_back({{on_paper(number.title), format_quantity(number.value, style),
                               number.limit ? format_quantity(*number.limit, style) : "",
                               inputs_text(number, style), notes_text(number, notes)},
                              false});
    }
    return table;
}

drawing::Table note_table(const Footnotes& notes) {
    drawing::Table table;
    table.columns = {{"note", Align::right},
                     {"how it was worked out, where it comes from, what was assumed"}};
    for (std::size_t i = 0; i < notes.texts().size(); ++i)
        table.rows.push_back({{std::to_string(i + 1), notes.texts()[i]}, false});
    return table;
}

}  // namespace

std::vector<Draft> number_sheets(const Context& context) {
    if (context.input.findings == nullptr || context.input.findings->numbers.empty()) return {};
    Footnotes notes;
    const LengthStyle style = computed_style(context.piece.style);
    TablePages pages{
        "numbers",
        "Numbers",
        {"What the checks worked out before wood is cut. All of it is an estimate, from the sizes of the "
         "design and published averages of the woods; a piece that people stand, sit or climb on is "
         "governed by local codes and licensed practice."},
        {number_table(context.input.findings->numbers, style, notes)}};
    pages.tables.push_back(note_table(notes));
    return table_sheets(context, pages);
}

}  // namespace rodwright::packet
