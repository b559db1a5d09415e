#include "backends/packet/parts/feature_table.hpp"

#include <algorithm>

#include "backends/packet/context.hpp"
#include "backends/packet/parts/feature_shape.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

// "out of left end", "into near face", "off far face": a body that stands out, a pocket, a cut from outside.
std::string where_is(FeatureOp op, const std::string& side) {
    if (op == FeatureOp::leave) return "out of " + side;
    return (op == FeatureOp::trim ? "off " : "into ") + side;
}

struct Interval {
    std::string start;
    std::string size;
    bool to_middle = false;  // of a hole seen square to it
    std::string start_text() const { return to_middle ? start + " to middle" : start; }
};

Interval interval_of(const Kind& kind, const Feature& feature, const Box& extent, Direction along,
                     const FigureStyle& style) {
    const Axis axis = along.axis;
    const Body& body = feature.body;
    const std::optional<Hollow> hollow = hollow_of(body, overall_box(kind));
    if (!hollow && body.form == BodyForm::cylinder && axis != body.frame.w.axis) {
        return {figure(distance_along(kind, along, body.frame.origin[axis]), style),
                figure(body.size_u, style) + " dia.", true};
    }
    const Rational& near_end = along.positive ? extent.low[axis] : extent.high[axis];
    const Rational start = distance_along(kind, along, near_end);
    const Rational outside = -start;
    const std::string text = start < 0 ? figure(outside, style) + " outside" : figure(start, style);
    return {text, figure(extent.size(axis), style), false};
}

// The same cut at several places along the part is one row.
struct Entry {
    std::string what;
    std::string on;
    std::string shape;
    std::vector<std::pair<Rational, std::string>> starts;
    std::array<Interval, 3> intervals;

    bool same_cut(const Entry& other) const {
        return what == other.what && on == other.on && shape == other.shape &&
               intervals[0].size == other.intervals[0].size &&
               intervals[1].start == other.intervals[1].start &&
               intervals[1].size == other.intervals[1].size &&
               intervals[2].start == other.intervals[2].start && intervals[2].size == other.intervals[2].size;
    }
};

std::array<Direction, 3> measured_along(const AxisView& view) {
    return {view.right, view.up, -view.towards};
}

std::optional<Entry> entry_of(const Kind& kind, const Feature& feature, const AxisView& view,
                              const FigureStyle& style) {
    const std::optional<Box> extent = extent_within(feature.body, overall_box(kind));
    if (!extent) return std::nullopt;
    Entry entry;
    entry.what = plain_words(feature.made_by);
    entry.on = where_is(feature.op, side_name(open_side(kind, feature), view));
    entry.shape = shape_text(kind, feature, view, style);
    const std::array<Direction, 3> along = measured_along(view);
    for (std::size_t i = 0; i < 3; ++i)
        entry.intervals[i] = interval_of(kind, feature, *extent, along[i], style);
    entry.starts.emplace_back(extent->low[Axis::wide], entry.intervals[0].start);
    return entry;
}

std::vector<Entry> entries_of(const Kind& kind, const AxisView& view, const FigureStyle& style) {
    std::vector<Entry> entries;
    for (const Feature& feature : kind.features) {
        if (feature.op == FeatureOp::blend || feature.op == FeatureOp::bevel) continue;
        std::optional<Entry> entry = entry_of(kind, feature, view, style);
        if (!entry) continue;
        const auto same =
            std::find_if(entries.begin(), entries.end(), [&](const Entry& e) { return e.same_cut(*entry); });
        if (same == entries.end()) {
            entries.push_back(std::move(*entry));
        } else if (std::find(same->starts.begin(), same->starts.end(), entry->starts[0]) ==
                   same->starts.end()) {
            same->starts.push_back(entry->starts[0]);
        }
    }
    return entries;
}

Row row_of(Entry entry) {
    std::sort(entry.starts.begin(), entry.starts.end());
    std::string starts;
    for (const auto& [at, text] : entry.starts) starts += (starts.empty() ? "" : "; ") + text;
    if (entry.intervals[0].to_middle) starts += " to middle";
    Row row;
    row.cells = {entry.what, entry.on, starts, entry.intervals[0].size};
    for (const std::size_t i : {1U, 2U}) {
        row.cells.push_back(entry.intervals[i].start_text());
        row.cells.push_back(entry.intervals[i].size);
    }
    row.cells.push_back(entry.shape);
    return row;
}

}  // namespace

namespace {

// A column that says nothing is left out.
void drop_last_if_empty(Table& table) {
    const auto empty = [](const Row& row) { return row.cells.back().empty(); };
    if (!std::all_of(table.rows.begin(), table.rows.end(), empty)) return;
    table.columns.pop_back();
    for (Row& row : table.rows) row.cells.pop_back();
}

}  // namespace

Table feature_table(const Kind& kind, const AxisView& view, const FigureStyle& style) {
    Table table;
    table.columns = {{"what"}, {"where"},          {"from left"}, {"long"}, {"from below"},
                     {"high"}, {"from near face"}, {"deep"},      {"shape"}};
    for (std::size_t i = 2; i < 8; ++i) table.columns[i].align = Align::right;
    constexpr std::size_t from_left = 2;  // may list many places
    constexpr std::size_t shape = 8;
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        table.columns[i].whole = i != from_left && i != shape;
    for (Entry& entry : entries_of(kind, view, style)) table.rows.push_back(row_of(std::move(entry)));
    drop_last_if_empty(table);
    return table;
}

}  // namespace rodwright::packet
