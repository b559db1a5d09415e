// Full-size templates of parts with a tapered or curved profile.
#include <algorithm>
#include <set>

#include "backends/drawing/dimension.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/packet/templates/abridged.hpp"
#include "backends/packet/templates/body_outline.hpp"
#include "backends/packet/templates/templates.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

// Work on the part by itself, joints apart, that takes wood away.
bool is_shaping(const Feature& feature) {
    return feature.op == FeatureOp::trim ||
           (feature.op == FeatureOp::remove && feature.joint == JointKindId::none);
}

bool runs_through(const Body& body, const Box& stock) {
    const Axis axis = body.frame.w.axis;
    const Rational& start = body.frame.origin[axis];
    const Rational end =
        body.frame.w.positive ? Rational(start + body.length) : Rational(start - body.length);
    return std::min(start, end) <= stock.low[axis] && std::max(start, end) >= stock.high[axis];
}

bool is_slanted(const std::vector<Vector>& section, Axis u, Axis v) {
    for (std::size_t i = 0; i < section.size(); ++i) {
        const Vector& next = section[(i + 1) % section.size()];
        if (section[i][u] != next[u] && section[i][v] != next[v]) return true;
    }
    return false;
}

// Whether it gives the part an outline that is neither straight nor square, seen along its sweep.
bool shapes_profile(const Feature& feature, const Box& stock) {
    const Body& body = feature.body;
    if (!is_shaping(feature) || !runs_through(body, stock)) return false;
    if (body.form == BodyForm::cylinder) return hollow_of(body, stock).has_value();
    return body.form == BodyForm::prism &&
           is_slanted(section_within(body, stock), body.frame.u.axis, body.frame.v.axis);
}

// Along `sweep`, the part lying as on its sheet: its reference end on the left wherever its length is seen.
AxisView view_along(const Kind& kind, Axis sweep) {
    const AxisView front = lying(kind);
    if (front.towards.axis == sweep) return front;
    return front.up.axis == sweep ? from_above(front) : from_side(front, true);
}

struct Profile {
    const Context& context;
    KindId id{};
    const Kind& kind;
    AxisView view;
    std::vector<const Feature*> features;  // that shape it

    Extents body() const { return on_paper(view, visible_box(kind)); }
    std::string text(const Rational& length) const { return figure(length, context.figures()); }
};

// Corners and the ends of arcs on the paper.
std::vector<Point2> corners_of(const Profile& profile, const Feature& feature) {
    const Box stock = visible_box(profile.kind);
    std::vector<Point2> corners;
    if (const auto hollow = hollow_of(feature.body, stock)) {
        const Axis up = hollow->open.axis;
        const Rational edge = hollow->open.positive ? stock.high[up] : stock.low[up];
        for (const Rational& across : {hollow->start, Rational(hollow->start + hollow->chord)}) {
            Vector corner;
            corner[hollow->across] = across;
            corner[up] = edge;
            corners.push_back(on_paper(profile.view, corner));
        }
        return corners;
    }
    for (const Vector& corner : section_within(feature.body, stock))
        corners.push_back(on_paper(profile.view, corner));
    return corners;
}

// A shape with more corners than this stands for a curve.
constexpr std::size_t most_corners = 8;

// Where something bends: of a curve all of it, of a straight taper its ends.
std::vector<Abridged::Stretch> bends_of(const Profile& profile) {
    std::vector<Abridged::Stretch> bends;
    const Box stock = visible_box(profile.kind);
    for (const Feature* feature : profile.features) {
        std::vector<Rational> places;
        for (const Point2& corner : corners_of(profile, *feature)) places.push_back(corner.u);
        const auto [low, high] = std::minmax_element(places.begin(), places.end());
        if (hollow_of(feature->body, stock) || places.size() > most_corners) {
            bends.push_back({*low, *high, 0});
        } else {
            for (const Rational& place : places) bends.push_back({place, place, 0});
        }
    }
    return bends;
}

// The visible body with its shaping and nothing else.
Projected outline_of(const Profile& profile) {
    Kind bare = profile.kind;
    bare.extend = {};
    std::erase_if(bare.features, [](const Feature& feature) { return !is_shaping(feature); });
    Diagnostics known;  // whatever cannot be built was reported with the part's own solid
    const SolidRef solid = profile.context.kernel.build(profile.context.piece, bare, known);
    if (!solid) return {};
    return project(profile.context.kernel, {{solid, {}, 0}}, profile.view.view(), false);
}

std::vector<Item> lines_of(const Projected& outline) {
    Sheet lines;
    draw_view(lines, outline, {});
    return lines.items;
}

// Running from the reference end: where it bends, and the whole length.
void draw_stations(Sheet& sheet, const Profile& profile, const Abridged& along, const Extents& body) {
    std::set<Rational> places;
    for (const Feature* feature : profile.features) {
        for (const Point2& corner : corners_of(profile, *feature)) places.insert(corner.u);
    }
    places.insert(body.high.u);
    places.erase(body.low.u);
    std::vector<Station> stations;
    for (const Rational& place : places)
        stations.push_back({along.at(place.get_d()), profile.text(Rational(place - body.low.u))});
    const double bottom = body.low.v.get_d();
    draw_running(sheet,
                 {Run::across, bottom, bottom - first_dimension, along.start(), stations, along.start() + 4,
                  along.end() + 4},
                 profile.context.fonts);
}

// What is left at one end of the length, where straight cuts come to it.
Extents left_at(const Profile& profile, const Extents& body, const Rational& end) {
    Extents left{{end, body.low.v}, {end, body.high.v}};
    for (const Feature* feature : profile.features) {
        std::vector<Rational> cut;
        for (const Point2& corner : corners_of(profile, *feature)) {
            if (corner.u == end) cut.push_back(corner.v);
        }
        if (cut.empty()) continue;
        const auto [low, high] = std::minmax_element(cut.begin(), cut.end());
        if (*low <= body.low.v) left.low.v = std::max(left.low.v, *high);
        if (*high >= body.high.v) left.high.v = std::min(left.high.v, *low);
    }
    return left;
}

void draw_end_height(Sheet& sheet, const Profile& profile, const Extents& left, double x, bool right) {
    if (left.height() <= 0) return;
    const double line = x + (right ? first_dimension : -first_dimension);
    draw_dimension(sheet,
                   {Run::upright,
                    {x, left.low.v.get_d()},
                    {x, left.high.v.get_d()},
                    line,
                    profile.text(left.height()),
                    Overflow::beyond_high},
                   profile.context.fonts);
}

// A hollow's rise on its centre line, and how an arc of that radius is found.
void draw_hollow(Sheet& sheet, const Profile& profile, const Abridged& along, const Hollow& hollow,
                 const Extents& body) {
    const bool seen_up = hollow.open.axis == profile.view.up.axis;
    if (!seen_up) return;  // an arc in an end: its sizes are in the notes
    Vector middle;
    middle[hollow.across] = hollow.start + hollow.chord / 2;
    const double x = along.at(on_paper(profile.view, middle).u.get_d());
    const bool top = hollow.open.positive == profile.view.up.positive;
    const double edge = top ? body.high.v.get_d() : body.low.v.get_d();
    const double deep = edge + (top ? -1 : 1) * hollow.rise.get_d();
    sheet.line(LineRole::centre, {x, body.low.v.get_d() - 6}, {x, body.high.v.get_d() + 6});
    draw_dimension(sheet,
                   {Run::upright,
                    {x + 1, deep},
                    {x + 1, edge},
                    x + 9,
                    profile.text(hollow.rise),
                    top ? Overflow::beyond_low : Overflow::beyond_high},
                   profile.context.fonts);
}

// Upright beside the left end.
void draw_reference_end(Sheet& sheet, const Extents& body, double x) {
    constexpr double half = 1.6;
    const double middle = (body.low.v.get_d() + body.high.v.get_d()) / 2;
    sheet.fill(black, {{x, middle}, {x - 2 * half, middle + half}, {x - 2 * half, middle - half}});
    sheet.text({"reference end", FontFace::regular, 2.5, {x - 20, middle}, Align::middle, true});
}

std::vector<std::string> profile_notes(const Profile& profile, const Abridged& along) {
    std::vector<std::string> notes;
    const Box stock = visible_box(profile.kind);
    for (const Feature* feature : profile.features) {
        std::string note = capitalised(plain_words(feature->made_by));
        if (const auto hollow = hollow_of(feature->body, stock)) {
            note += ": an arc " + profile.text(hollow->rise) + " high over " + profile.text(hollow->chord) +
                    ", radius " + profile.text(Rational(feature->body.size_u / 2));
        }
        notes.push_back(note + ". Saw outside the line and finish to it.");
    }
    const Extent& extend = profile.kind.extend[static_cast<std::size_t>(Axis::wide)];
    if (extend.low != 0 || extend.high != 0)
        notes.emplace_back("From shoulder to shoulder: what joints add at the ends is not in it.");
    for (std::string& note : along.note()) notes.push_back(std::move(note));
    for (std::string& note : mirror_note(profile.context, profile.id)) notes.push_back(std::move(note));
    return notes;
}

Template drawn_profile(const Profile& profile, const Projected& outline, const std::string& file) {
    const Extents body = profile.body();
    const Abridged along(body.low.u, body.high.u, bends_of(profile), profile.context.piece.style.unit);
    Sheet sheet;
    const double bottom = body.low.v.get_d();
    const double top = body.high.v.get_d();
    along.draw(sheet, lines_of(outline), bottom, top, profile.context.figures());
    draw_stations(sheet, profile, along, body);
    draw_end_height(sheet, profile, left_at(profile, body, body.low.u), along.start(), false);
    draw_end_height(sheet, profile, left_at(profile, body, body.high.u), along.end(), true);
    for (const Feature* feature : profile.features) {
        if (const auto hollow = hollow_of(feature->body, visible_box(profile.kind)))
            draw_hollow(sheet, profile, along, *hollow, body);
    }
    draw_reference_end(sheet, body, along.start());
    if (profile.view.right.axis == Axis::wide) draw_grain_arrow(sheet, {along.start(), top + 6});
    return captioned(profile.context, profile.kind.letter, plain_words(profile.kind.name),
                     profile_notes(profile, along), std::move(sheet), file);
}

}  // namespace

std::vector<Template> profile_templates(const Context& context) {
    std::vector<Template> found;
    for (std::size_t i = 0; i < context.piece.kinds.size(); ++i) {
        const Kind& kind = context.piece.kinds[i];
        if (kind.mirror_of) continue;
        std::size_t count = 0;
        for (const Axis sweep : all_axes) {
            Profile profile{context, static_cast<KindId>(i), kind, view_along(kind, sweep), {}};
            for (const Feature& feature : kind.features) {
                if (feature.body.frame.w.axis == sweep && shapes_profile(feature, visible_box(kind)))
                    profile.features.push_back(&feature);
            }
            if (profile.features.empty()) continue;
            const Projected outline = outline_of(profile);
            if (outline.lines.empty()) continue;
            ++count;
            std::vector<std::string> words = {kind.name, kind.letter};
            if (count > 1) words.push_back(std::to_string(count));
            found.push_back(drawn_profile(profile, outline, file_name(words)));
        }
    }
    return found;
}

}  // namespace rodwright::packet
