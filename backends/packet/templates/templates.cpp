#include "backends/packet/templates/templates.hpp"

#include <algorithm>
#include <iterator>

#include "backends/drawing/balloon.hpp"
#include "backends/drawing/seen.hpp"
#include "backends/drawing/text_layout.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

std::vector<Template> templates(const Context& context) {
    std::vector<Template> all = profile_templates(context);
    for (const auto& make : {layout_strips, joint_layouts, router_templates}) {
        std::vector<Template> more = make(context);
        all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    }
    return all;
}

Sheet whole(const Template& each) {
    constexpr double gap = 3;
    Sheet both = each.drawing;
    const Rect& box = each.drawing.frame;
    const Point by =
        Point{box.left, box.top + gap} - Point{each.caption.frame.left, each.caption.frame.bottom};
    for (const Item& item : each.caption.items) both.items.push_back(moved(item, by));
    both.frame = around(box, moved(each.caption.frame, by));
    return both;
}

static Sheet caption_of(const Context& context, const std::string& letter, const std::string& name,
                        const std::vector<std::string>& notes, double width) {
    constexpr double name_height = 3.5;
    constexpr double height = 2.5;
    Sheet caption;
    const double middle = -balloon_radius;
    if (!letter.empty()) draw_balloon(caption, {balloon_radius, middle}, letter, context.fonts);
    const double beside = letter.empty() ? 0 : 2 * balloon_radius + 2;
    const Point at{beside, middle - name_height / 2};
    caption.text(
        fitted({name, FontFace::bold, name_height, at, Align::left, false}, width - beside, context.fonts));
    std::vector<std::string> lines;
    for (const std::string& note : notes) {
        for (std::string& line : wrap(note, FontFace::regular, height, width, context.fonts))
            lines.push_back(std::move(line));
    }
    set_lines(caption, lines, {"", FontFace::regular, height, {0, 0}, Align::left, false},
              -2 * balloon_radius - 2);
    caption.frame = seen_extent(caption.items, context.fonts)->grown(1);
    return caption;
}

Template captioned(const Context& context, const std::string& letter, const std::string& name,
                   const std::vector<std::string>& notes, Sheet drawing, const std::string& file) {
    constexpr double least_width = 84;
    constexpr double most_width = 150;
    drawing.frame = seen_extent(drawing.items, context.fonts).value_or(Rect{}).grown(1);
    const double width = std::clamp(drawing.frame.width(), least_width, most_width);
    const std::string full = letter.empty() ? name : letter + " " + name;
    drawing.title = full;
    return {full, file, std::move(drawing), caption_of(context, letter, name, notes, width)};
}

std::string file_name(const std::vector<std::string>& words) {
    const auto plain = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    };
    std::string name = joined(words, "-");
    std::replace_if(
        name.begin(), name.end(), [&](char c) { return !plain(c); }, '-');
    return name;
}

std::string few_of(const std::vector<std::string>& names) {
    constexpr std::size_t most = 6;
    if (names.size() <= most) return joined(names);
    const std::vector<std::string> first(names.begin(), names.begin() + most);
    return joined(first) + " and " + std::to_string(names.size() - most) + " more";
}

std::vector<std::string> mirror_note(const Context& context, KindId kind) {
    std::vector<std::string> letters;
    for (const KindId mirror : mirrors_of(context.piece, kind))
        letters.push_back(context.piece[mirror].letter);
    if (letters.empty()) return {};
    return {"Turn it over for " + few_of(letters) + ", the opposite hand."};
}

}  // namespace rodwright::packet
