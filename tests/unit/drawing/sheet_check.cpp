#include "tests/unit/drawing/sheet_check.hpp"

#include <algorithm>

namespace rodwright::testing {

using namespace drawing;

namespace {

constexpr double frame_slack = 0.01;
constexpr double touching = 0.15;  // mm: letters seldom fill their box

Rect box_of(const Item& item, const Fonts& fonts) {
    if (const auto* text = std::get_if<Text>(&item)) return text_box(*text, fonts);
    return extent_of(item).value_or(Rect{});
}

std::string name_of(const Item& item) {
    if (const auto* text = std::get_if<Text>(&item)) return "`" + text->text + "`";
    if (std::holds_alternative<Fill>(item) || std::holds_alternative<Disc>(item)) return "a filled shape";
    return "a line";
}

// Liang and Barsky's test: whether part of the segment lies within the box.
bool crosses(Point a, Point b, const Rect& box) {
    double from = 0;
    double to = 1;
    const auto clip = [&](double start, double way, double low, double high) {
        if (way == 0) return start > low && start < high;
        const double first = (low - start) / way;
        const double second = (high - start) / way;
        from = std::max(from, std::min(first, second));
        to = std::min(to, std::max(first, second));
        return from < to;
    };
    return clip(a.x, b.x - a.x, box.left, box.right) && clip(a.y, b.y - a.y, box.bottom, box.top);
}

bool crosses(const Stroke& stroke, const Rect& box) {
    for (std::size_t i = 1; i < stroke.points.size(); ++i) {
        if (crosses(stroke.points[i - 1], stroke.points[i], box)) return true;
    }
    return stroke.closed && crosses(stroke.points.back(), stroke.points.front(), box);
}

bool is_edge(const Stroke& stroke) {
    return stroke.role == LineRole::visible || stroke.role == LineRole::hidden ||
           stroke.role == LineRole::frame;
}

void check_text(const Sheet& sheet, std::size_t index, const Fonts& fonts, std::vector<std::string>& faults) {
    const Rect box = text_box(std::get<Text>(sheet.items[index]), fonts).grown(-touching);
    const std::string name = name_of(sheet.items[index]);
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        const auto* other = std::get_if<Text>(&sheet.items[i]);
        if (other != nullptr && i > index && box.overlaps(text_box(*other, fonts).grown(-touching))) {
            faults.push_back(sheet.title + ": " + name + " on `" + other->text + "`");
        }
        const auto* stroke = std::get_if<Stroke>(&sheet.items[i]);
        if (stroke != nullptr && is_edge(*stroke) && crosses(*stroke, box)) {
            faults.push_back(sheet.title + ": " + name + " on a drawn edge");
        }
    }
}

}  // namespace

std::vector<std::string> faults_of(const Sheet& sheet, const Fonts& fonts) {
    std::vector<std::string> faults;
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        const Item& item = sheet.items[i];
        const bool draws = extent_of(item).has_value();
        if (draws && !sheet.frame.contains(box_of(item, fonts), frame_slack)) {
            faults.push_back(sheet.title + ": " + name_of(sheet.items[i]) + " is outside the frame");
        }
        if (std::holds_alternative<Text>(sheet.items[i])) check_text(sheet, i, fonts, faults);
    }
    return faults;
}

}  // namespace rodwright::testing
