#include "tests/unit/drawing/sheet_check.hpp"

#include <algorithm>
#include <optional>

#include "backends/drawing/ink.hpp"
#include "backends/drawing/line_style.hpp"
#include "backends/drawing/seen.hpp"

namespace rodwright::testing {

using namespace drawing;

namespace {

constexpr double frame_slack = 0.01;
constexpr double touching = 0.15;  // mm: letters seldom fill their box

std::string name_of(const Item& item) {
    if (const auto* text = std::get_if<Text>(&item)) return "`" + text->text + "`";
    if (const auto* stroke = std::get_if<Stroke>(&item))
        return "a line (" + std::string(drawing::name_of(stroke->role)) + ")";
    if (const auto* arc = std::get_if<Arc>(&item))
        return "an arc (" + std::string(drawing::name_of(arc->role)) + ")";
    return "a filled shape";
}

bool around_middle(const Arc& arc, const Rect& text) {
    const Rect middle = Rect{text.centre().x, text.centre().y, text.centre().x, text.centre().y}.grown(1);
    return arc.whole() && middle.contains({arc.centre.x, arc.centre.y, arc.centre.x, arc.centre.y});
}

// What may stand around a text's middle: letters of parts stand in circles.
bool is_ring(const Item& item, const Rect& text) {
    const auto* arc = std::get_if<Arc>(&item);
    return arc != nullptr && around_middle(*arc, text);
}

using Boxes = std::vector<std::optional<Rect>>;

void check_text(const Sheet& sheet, std::size_t index, const Boxes& seen, std::vector<std::string>& faults) {
    const Rect box = seen[index]->grown(-touching);
    if (box.width() <= 0 || box.height() <= 0) return;
    const auto report = [&](const std::string& what) {
        faults.push_back(sheet.title + ": " + name_of(sheet.items[index]) + " on " + what);
    };
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        const Item& item = sheet.items[i];
        if (i == index || !seen[i] || !box.overlaps(seen[i]->grown(1e-5))) continue;
        if (std::holds_alternative<Text>(item)) {
            if (i > index && box.overlaps(seen[i]->grown(-touching))) report(name_of(item));
        } else if (!is_ring(item, box) && inks(item, common(box, seen[i]->grown(1e-5)))) {
            report(name_of(item));
        }
    }
}

void check_glyphs(const Sheet& sheet, const Text& text, const Fonts& fonts,
                  std::vector<std::string>& faults) {
    for (const char32_t character : characters_of(text.text)) {
        if (!fonts[text.face].metrics.has(character))
            faults.push_back(sheet.title + ": `" + text.text + "` has a character that the font lacks");
    }
}

// The border's group is drawn between the frame and the edge of the paper, all else within the frame.
void check_place(const Sheet& sheet, std::size_t index, bool border, const Rect& seen,
                 std::vector<std::string>& faults) {
    const Item& item = sheet.items[index];
    if (!border && !sheet.frame.contains(seen, frame_slack))
        faults.push_back(sheet.title + ": " + name_of(item) + " is outside the frame");
    if (!border) return;
    if (!Rect{0, 0, sheet.width, sheet.height}.contains(seen))
        faults.push_back(sheet.title + ": " + name_of(item) + " is off the paper");
    if (sheet.frame.grown(-touching).overlaps(seen))
        faults.push_back(sheet.title + ": " + name_of(item) + " of the border is inside the frame");
}

}  // namespace

std::vector<std::string> faults_of(const Sheet& sheet, const Fonts& fonts) {
    std::vector<std::string> faults;
    const Boxes seen = seen_boxes(sheet.items, fonts);
    bool border = false;
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        if (const auto* group = std::get_if<GroupStart>(&sheet.items[i])) border = group->name == "border";
        if (std::holds_alternative<GroupEnd>(sheet.items[i])) border = false;
        if (!seen[i]) continue;
        check_place(sheet, i, border, *seen[i], faults);
        const auto* text = std::get_if<Text>(&sheet.items[i]);
        if (text == nullptr) continue;
        check_text(sheet, i, seen, faults);
        check_glyphs(sheet, *text, fonts, faults);
    }
    return faults;
}

}  // namespace rodwright::testing
