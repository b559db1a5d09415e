#include "backends/drawing/seen.hpp"

#include "backends/drawing/text_run.hpp"

namespace rodwright::drawing {

std::vector<std::optional<Rect>> seen_boxes(const std::vector<Item>& items, const Fonts& fonts) {
    std::vector<std::optional<Rect>> boxes;
    std::vector<Rect> clips;
    for (const Item& item : items) {
        std::optional<Rect> box = extent_of(item);
        if (const auto* text = std::get_if<Text>(&item)) box = text_box(*text, fonts);
        if (const auto* clip = std::get_if<ClipStart>(&item))
            clips.push_back(clips.empty() ? clip->box : common(clips.back(), clip->box));
        if (std::holds_alternative<ClipEnd>(item) && !clips.empty()) clips.pop_back();
        if (box && !clips.empty()) {
            box = common(*box, clips.back());
            if (box->right < box->left || box->top < box->bottom) box.reset();
        }
        boxes.push_back(box);
    }
    return boxes;
}

std::optional<Rect> seen_extent(const std::vector<Item>& items, const Fonts& fonts) {
    std::optional<Rect> extent;
    for (const std::optional<Rect>& box : seen_boxes(items, fonts)) {
        if (box) extent = extent ? around(*extent, *box) : *box;
    }
    return extent;
}

}  // namespace rodwright::drawing
