#include "tests/unit/drawing/rebuilt_kind.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "backends/packet/context.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/words.hpp"

namespace rodwright::testing {

using drawing::AxisView;

namespace {

std::vector<std::string> split(const std::string& text, const std::string& between) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    while (true) {
        const std::size_t at = text.find(between, from);
        parts.push_back(text.substr(from, at - from));
        if (at == std::string::npos) return parts;
        from = at + between.size();
    }
}

bool take_end(std::string& text, const std::string& end) {
    if (!text.ends_with(end)) return false;
    text.resize(text.size() - end.size());
    return true;
}

// "3", "3/8", "1 3/8", "2.5"
Rational number_in(const std::string& text) {
    Rational sum;
    for (const std::string& word : split(text, " ")) {
        const std::size_t point = word.find('.');
        if (point == std::string::npos) {
            sum += Rational(word);
            continue;
        }
        Rational digits(word.substr(0, point) + word.substr(point + 1));
        for (std::size_t i = point + 1; i < word.size(); ++i) digits /= 10;
        sum += digits;
    }
    return sum;
}

struct Interval {
    Rational start;  // from the visible body's lower side
    Rational size;
    bool hole = false;  // `start` is the middle, `size` the diameter
};

class Reader {
  public:
    Reader(const Kind& kind, const AxisView& view, const LengthStyle& style)
        : kind_(kind), view_(view), style_(style) {}

    Rational length(const std::string& text) {
        const PrintedLength read = printed_length(text, style_.unit);
        rounded_ |= read.rounded;
        return read.millimetres;
    }

    std::vector<Feature> features(const std::vector<std::string>& cells) {
        std::string starts = cells[2];
        const bool middles = take_end(starts, " to middle");
        std::vector<Feature> made;
        for (const std::string& start : split(starts, "; ")) {
            std::map<Axis, Interval> box;
            box[view_.right.axis] = interval(start, cells[3], middles);
            box[view_.up.axis] = interval(cells[4], cells[5], false);
            box[view_.towards.axis] = interval(cells[6], cells[7], false);
            made.push_back(feature(cells, box));
        }
        return made;
    }

    bool rounded() const { return rounded_; }

  private:
    Interval interval(std::string start, std::string size, bool middle) {
        middle |= take_end(start, " to middle");
        const bool outside = take_end(start, " outside");
        const bool hole = take_end(size, " dia.");
        CHECK(hole == middle);
        const Rational at = length(start);
        return {outside ? Rational(-at) : at, length(size), hole};
    }

    Direction side(const std::string& name) const {
        const std::map<std::string, Direction> sides = {
            {"right end", view_.right}, {"left end", -view_.right},   {"upper edge", view_.up},
            {"lower edge", -view_.up},  {"near face", view_.towards}, {"far face", -view_.towards}};
        const auto found = sides.find(name);
        REQUIRE_MESSAGE(found != sides.end(), "no side of a drawing: " << name);
        return found->second;
    }

    // The direction in which the drawing measures along an axis.
    Direction measured(Axis axis) const {
        if (axis == view_.right.axis) return view_.right;
        return axis == view_.up.axis ? view_.up : -view_.towards;
    }

    // The lower coordinate, in the kind's frame.
    Rational low(Axis axis, const Interval& interval) const {
        const bool positive = measured(axis).positive;
        if (interval.hole) return positive ? interval.start : Rational(kind_.size[axis] - interval.start);
        return positive ? interval.start : Rational(kind_.size[axis] - interval.start - interval.size);
    }

    // The feature of the kind that the row is about, for the class of its shape.
    const Feature& pattern(const std::vector<std::string>& cells, FeatureOp op) const {
        for (const Feature& each : kind_.features) {
            const bool same = each.op == op && plain_words(each.made_by) == cells[0];
            const bool curved = each.body.form != BodyForm::box;
            const bool shaped = cells.size() > 8 && !cells[8].empty();
            if (same && (!shaped || curved)) return each;
        }
        FAIL("the sheet has a row for what the part has not: " << cells[0]);
        return kind_.features.front();
    }

    Feature feature(const std::vector<std::string>& cells, const std::map<Axis, Interval>& box) {
        Feature made;
        std::string where = cells[1];
        made.op = where.starts_with("out of ") ? FeatureOp::leave
                  : where.starts_with("off ")  ? FeatureOp::trim
                                               : FeatureOp::remove;
        for (const std::string word : {"out of ", "off ", "into "}) {
            if (where.starts_with(word)) where.erase(0, word.size());
        }
        const Feature& like = pattern(cells, made.op);
        made.made_by = like.made_by;
        made.label = like.label;
        const std::string shape = cells.size() > 8 ? cells[8] : "";
        const auto hole =
            std::count_if(box.begin(), box.end(), [](const auto& each) { return each.second.hole; });
        made.body = hole == 2 ? cylinder(box) : body(box, shape, side(where), like.body.frame.w.axis);
        return made;
    }

    Body cylinder(const std::map<Axis, Interval>& box) const {
        Body body;
        body.form = BodyForm::cylinder;
        for (const auto& [axis, interval] : box) {
            body.frame.origin[axis] = low(axis, interval);
            if (interval.hole) {
                body.size_u = body.size_v = interval.size;
            } else {
                body.length = interval.size;
                body.frame.w = {axis, true};
            }
        }
        const auto [u, v] = others(body.frame.w.axis);
        body.frame.u = {u, true};
        body.frame.v = {v, true};
        return body;
    }

    static std::pair<Axis, Axis> others(Axis axis) {
        if (axis == Axis::wide) return {Axis::deep, Axis::tall};
        if (axis == Axis::deep) return {Axis::wide, Axis::tall};
        return {Axis::wide, Axis::deep};
    }

    Body body(const std::map<Axis, Interval>& box, const std::string& shape, Direction open, Axis swept) {
        const auto [u, v] = others(swept);
        Body body;
        body.form = BodyForm::prism;
        for (const auto& [axis, interval] : box) body.frame.origin[axis] = low(axis, interval);
        body.frame.u = {u, true};
        body.frame.v = {v, true};
        body.frame.w = {swept, true};
        body.length = box.at(swept).size;
        const Rational& wide = box.at(u).size;
        const Rational& tall = box.at(v).size;
        if (shape == "arc") return arc(body, open, wide, tall);
        if (shape.starts_with("wedge")) {
            body.profile = wedge(shape, open, u, wide, tall);
        } else if (shape.starts_with("dovetail")) {
            body.profile = dovetail(shape, u, wide, tall);
        } else if (shape.starts_with("corners ")) {
            body.profile = corners(shape, u, v, wide, tall);
        } else {
            body.profile = {{0, 0}, {wide, 0}, {wide, tall}, {0, tall}};
        }
        return body;
    }

    // Radius from chord and rise: c^2 / 8h + h / 2.
    static Body arc(Body body, Direction open, const Rational& wide, const Rational& tall) {
        const bool rises_in_u = open.axis == body.frame.u.axis;
        const Rational& chord = rises_in_u ? tall : wide;
        const Rational& rise = rises_in_u ? wide : tall;
        const Rational radius = chord * chord / (8 * rise) + rise / 2;
        const Axis along = rises_in_u ? body.frame.v.axis : body.frame.u.axis;
        body.form = BodyForm::cylinder;
        body.size_u = body.size_v = 2 * radius;
        body.frame.origin[along] += chord / 2;
        if (open.positive) {
            body.frame.origin[open.axis] += radius;
        } else {
            body.frame.origin[open.axis] += rise - radius;
        }
        return body;
    }

    // The corner that is missing lies across from the deepest one.
    std::vector<Point2> wedge(const std::string& shape, Direction open, Axis u, const Rational& wide,
                              const Rational& tall) const {
        const std::string from = "wedge, deepest at the ";
        const Direction deepest = side(shape.substr(from.size(), shape.find(',', from.size()) - from.size()));
        const Direction in_u = open.axis == u ? open : deepest;
        const Direction in_v = open.axis == u ? deepest : open;
        std::vector<Point2> profile = {{0, 0}, {wide, 0}, {wide, tall}, {0, tall}};
        const Point2 missing{in_u.positive ? Rational(0) : wide, in_v.positive ? Rational(0) : tall};
        std::erase(profile, missing);
        return profile;
    }

    std::vector<Point2> dovetail(const std::string& shape, Axis u, const Rational& wide,
                                 const Rational& tall) {
        const std::string from = "dovetail, ";
        const std::size_t at = shape.find(" at the ");
        const Rational narrow = length(shape.substr(from.size(), at - from.size()));
        const std::size_t name = at + std::string(" at the ").size();
        const Direction mouth = side(shape.substr(name, shape.find(',', name) - name));
        // As if the mouth were at v = 0, then turned.
        const bool across_u = mouth.axis != u;
        const Rational& broad = across_u ? wide : tall;
        const Rational& high = across_u ? tall : wide;
        const Rational in = (broad - narrow) / 2;
        std::vector<Point2> profile = {{in, 0}, {Rational(broad - in), 0}, {broad, high}, {0, high}};
        for (Point2& corner : profile) {
            if (mouth.positive) corner.v = high - corner.v;
            if (!across_u) std::swap(corner.u, corner.v);
        }
        return profile;
    }

    std::vector<Point2> corners(const std::string& shape, Axis u, Axis v, const Rational& wide,
                                const Rational& tall) {
        std::vector<Point2> profile;
        const bool u_first = u == view_.right.axis || (u == view_.up.axis && v == view_.towards.axis);
        for (const std::string& pair : split(shape.substr(std::string("corners ").size()), "; ")) {
            const std::vector<std::string> both = split(pair, ", ");
            REQUIRE(both.size() == 2);
            Point2 corner{length(both[u_first ? 0 : 1]), length(both[u_first ? 1 : 0])};
            if (!measured(u).positive) corner.u = wide - corner.u;
            if (!measured(v).positive) corner.v = tall - corner.v;
            profile.push_back(corner);
        }
        return profile;
    }

    const Kind& kind_;
    const AxisView& view_;
    const LengthStyle& style_;
    bool rounded_ = false;
};

}  // namespace

PrintedLength printed_length(std::string text, LengthUnit unit) {
    PrintedLength read;
    if (text.starts_with("~")) {
        read.rounded = true;
        text.erase(0, 1);
    }
    take_end(text, unit == LengthUnit::inch ? "\"" : " mm");
    REQUIRE_MESSAGE(text.find_first_not_of("0123456789 ./") == std::string::npos, "no length: " << text);
    read.millimetres = number_in(text);
    if (unit == LengthUnit::inch) read.millimetres *= ratio(254, 10);
    return read;
}

Kind rebuilt(const Kind& kind, const std::vector<std::vector<std::string>>& rows, const AxisView& view,
             const LengthStyle& style, bool& rounded) {
    Kind made;
    made.name = kind.name;
    Reader reader(kind, view, style);
    for (const Axis axis : all_axes) {
        made.size[axis] = reader.length(packet::figure(kind.size[axis], style));
        const Extent& extend = kind.extend[static_cast<std::size_t>(axis)];
        made.extend[static_cast<std::size_t>(axis)] = {reader.length(packet::figure(extend.low, style)),
                                                       reader.length(packet::figure(extend.high, style))};
    }
    for (const std::vector<std::string>& cells : rows) {
        for (Feature& feature : reader.features(cells)) made.features.push_back(std::move(feature));
    }
    for (const Feature& feature : kind.features) {
        if (feature.op != FeatureOp::blend && feature.op != FeatureOp::bevel) continue;
        Feature eased = feature;
        eased.size = reader.length(packet::figure(feature.size, style));
        made.features.push_back(std::move(eased));
    }
    rounded = reader.rounded();
    return made;
}

}  // namespace rodwright::testing
