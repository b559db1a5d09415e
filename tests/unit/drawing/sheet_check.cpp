#include "tests/unit/drawing/sheet_check.hpp"

#include <algorithm>
#include <optional>

#include "backends/drawing/seen.hpp"

namespace rodwright::testing {

using namespace drawing;

namespace {

constexpr double frame_slack = 0.01;
constexpr double touching = 0.15;  // mm: letters seldom fill their box

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
    if (box.right <= box.left || box.top <= box.bottom) return false;
    for (std::size_t i = 1; i < stroke.points.size(); ++i) {
        if (crosses(stroke.points[i - 1], stroke.points[i], box)) return true;
    }
    return stroke.closed && crosses(stroke.points.back(), stroke.points.front(), box);
}

bool is_edge(const Stroke& stroke) {
    return stroke.role == LineRole::visible || stroke.role == LineRole::hidden ||
           stroke.role == LineRole::frame;
}

using Boxes = std::vector<std::optional<Rect>>;

void check_text(const Sheet& sheet, std::size_t index, const Boxes& seen, std::vector<std::string>& faults) {
    const Rect box = seen[index]->grown(-touching);
    const std::string name = name_of(sheet.items[index]);
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        if (!seen[i]) continue;
        const auto* other = std::get_if<Text>(&sheet.items[i]);
        if (other != nullptr && i > index && box.overlaps(seen[i]->grown(-touching))) {
            faults.push_back(sheet.title + ": " + name + " on `" + other->text + "`");
        }
        const auto* stroke = std::get_if<Stroke>(&sheet.items[i]);
        if (stroke != nullptr && is_edge(*stroke) && crosses(*stroke, common(box, seen[i]->grown(1e-6)))) {
            faults.push_back(sheet.title + ": " + name + " on a drawn edge");
        }
    }
}

}  // namespace

std::vector<std::string> faults_of(const Sheet& sheet, const Fonts& fonts) {
    std::vector<std::string> faults;
    const Boxes seen = seen_boxes(sheet.items, fonts);
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        if (!seen[i]) continue;
        if (!sheet.frame.contains(*seen[i], frame_slack)) {
            faults.push_back(sheet.title + ": " + name_of(sheet.items[i]) + " is outside the frame");
        }
        if (std::holds_alternative<Text>(sheet.items[i])) check_text(sheet, i, seen, faults);
    }
    return faults;
}

}  // namespace rodwright::testing
