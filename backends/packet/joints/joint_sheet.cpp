// The sheet of one distinct joint: its members apart and together, sections, its numbers, what it takes.
#include <algorithm>
#include <optional>

#include "backends/drawing/dimension.hpp"
#include "backends/drawing/scale.hpp"
#include "backends/drawing/table.hpp"
#include "backends/drawing/text_flow.hpp"
#include "backends/packet/joints/joint_views.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double edge = 6;
constexpr double caption_strip = 6;

std::string name_of(const JointKind& kind) {
    return capitalised(plain_words(kind.work.definition));
}

std::string part_text(const Piece& piece, PartId part) {
    const Kind& kind = piece[piece[part].kind];
    return kind.letter + "\u00a0" + plain_words(kind.name);
}

bool same_work(const Work& a, const Work& b) {
    return a.definition == b.definition && a.numbers == b.numbers && a.words == b.words;
}

// "tenon on C side apron, mortise in A1 leg", once for each pair of kinds.
std::vector<std::string> pairs_of(const Piece& piece, const std::vector<JointId>& joints) {
    std::vector<std::string> pairs;
    for (const JointId id : joints) {
        std::vector<std::string> members;
        for (const JointMember& member : piece[id].members)
            members.push_back(plain_words(member.role) + ": " + part_text(piece, member.part));
        std::string pair = joined(members);
        if (std::find(pairs.begin(), pairs.end(), pair) == pairs.end()) pairs.push_back(std::move(pair));
    }
    return pairs;
}

double draw_heading(Sheet& sheet, const Context& context, const DistinctJoint& distinct, const Rect& room) {
    const JointKind& kind = context.piece[distinct.kind];
    constexpr double name_height = 5;
    constexpr double height = 2.5;
    double top = room.top;
    sheet.text(fitted(
        {name_of(kind), FontFace::bold, name_height, {room.left, top - name_height}, Align::left, false},
        room.width(), context.fonts));
    top -= name_height + 4;
    std::vector<std::string> paragraphs = {kind.work.doc,
                                           counted(distinct.joints.size(), "joint") + ". " +
                                               joined(pairs_of(context.piece, distinct.joints), "; ")};
    for (const std::string& paragraph : paragraphs) {
        const std::vector<std::string> lines =
            wrap(paragraph, FontFace::regular, height, room.width(), context.fonts);
        set_lines(sheet, lines, {"", FontFace::regular, height, {room.left, 0}, Align::left, false}, top);
        top -= line_pitch * height * static_cast<double>(lines.size());
    }
    return top - edge;
}

void draw_caption(Sheet& sheet, const Context& context, const std::string& caption, const Rect& room) {
    sheet.text(
        fitted({caption, FontFace::regular, 2.5, {room.centre().x, room.bottom + 1}, Align::middle, false},
               room.width(), context.fonts));
}

Rect over_caption(const Rect& room) {
    return {room.left, room.bottom + caption_strip, room.right, room.top};
}

void draw_pictorials(Sheet& sheet, const Context& context, const JointViews& views, const Rect& room) {
    const double middle = room.left + 0.56 * room.width();
    const Rect left{room.left, room.bottom, middle - edge, room.top};
    const Rect right{middle, room.bottom, room.right, room.top};
    views.pictorial(true, over_caption(left)).draw(sheet);
    draw_caption(sheet, context, "Apart", left);
    views.pictorial(false, over_caption(right)).draw(sheet);
    draw_caption(sheet, context, "Together", right);
}

// The sizes of a section along one direction of the paper, from the lowest that it shows.
std::vector<Station> section_stations(const Context& context, const JointViews& views,
                                      Direction section_along, Direction paper, const Section& section,
                                      double at, double factor) {
    std::vector<Rational> marks = views.marks(section_along, paper.axis);
    if (!paper.positive) std::reverse(marks.begin(), marks.end());
    const bool across = paper == section.from.right;
    const Rect& seen = section.lines.bounds;
    std::vector<Station> stations;
    std::optional<Rational> first;
    for (const Rational& mark : marks) {
        const double on_paper = paper.positive ? mark.get_d() : -mark.get_d();
        constexpr double slack = 1e-3;  // mm
        if (on_paper < (across ? seen.left : seen.bottom) - slack) continue;
        if (on_paper > (across ? seen.right : seen.top) + slack) continue;
        if (!first) first = mark;
        stations.push_back({at + (on_paper - (across ? seen.left : seen.bottom)) * factor,
                            figure(abs(mark - *first), context.figures())});
    }
    return stations;
}

// What they take of the paper beside or under a section.
double size_strip(const Context& context, const std::vector<Station>& stations) {
    return stations.size() < 2 ? 0 : first_dimension + running_depth(stations, context.fonts) + 1;
}

// Of stations that stand closest together, the second goes: the table has every number.
void drop_closest(std::vector<Station>& stations) {
    std::size_t closest = 1;
    for (std::size_t i = 2; i < stations.size(); ++i) {
        if (stations[i].at - stations[i - 1].at < stations[closest].at - stations[closest - 1].at)
            closest = i;
    }
    stations.erase(stations.begin() + static_cast<std::ptrdiff_t>(closest));
}

// Figures may stand as far as `high`, past the section.
void draw_section_sizes(Sheet& sheet, const Context& context, const Rect& box, Run run,
                        std::vector<Station> stations, double high) {
    if (stations.size() < 2) return;
    const bool across = run == Run::across;
    const double outline = across ? box.bottom : box.left;
    const double datum = stations.front().at;
    stations.erase(stations.begin());
    const double low = across ? box.left : box.bottom;
    RunningDimension running{run, outline, outline - first_dimension, datum, std::move(stations), low, high};
    while (running.stations.size() > 1 && !fits(running, context.fonts)) drop_closest(running.stations);
    draw_running(sheet, running, context.fonts);
}

// A section with the room that is left for it beside its sizes.
struct PlacedSection {
    Section section;
    Rect room;
    Scale scale;
};

PlacedSection place_section(const Context& context, const JointViews& views, Direction along,
                            const Rect& room, double most_across, double most_up) {
    PlacedSection placed{views.section(along, most_across, most_up), room, {}};
    const auto strip = [&](Direction paper) {
        return size_strip(context, section_stations(context, views, along, paper, placed.section, 0, 1));
    };
    placed.room.left += strip(placed.section.from.up);
    placed.room.bottom += strip(placed.section.from.right);
    const Rect& extent = placed.section.lines.bounds;
    placed.scale = choose_scale(context.piece.style.unit, extent.width(), extent.height(),
                                placed.room.width(), placed.room.height(), {2, 1});
    return placed;
}

// All of the joint where it can be read so; else as much of it as has room at half size.
PlacedSection readable_section(const Context& context, const JointViews& views, Direction along,
                               const Rect& room) {
    constexpr double readable = 0.5;
    constexpr double any = 1e6;  // mm
    PlacedSection whole = place_section(context, views, along, room, any, any);
    if (whole.scale.factor() >= readable) return whole;
    return place_section(context, views, along, room, whole.room.width() / readable,
                         whole.room.height() / readable);
}

void draw_one_section(Sheet& sheet, const Context& context, const JointViews& views, Direction along,
                      const std::string& name, const Rect& room) {
    const auto [section, inner, scale] = readable_section(context, views, along, over_caption(room));
    const Rect& extent = section.lines.bounds;
    if (extent.width() <= 0 || extent.height() <= 0) return;
    const ViewPlace place{scale.factor(), extent.centre(), inner.centre()};
    draw_section(sheet, section, place);
    const Rect box = place.on_sheet(extent);
    draw_section_sizes(
        sheet, context, box, Run::across,
        section_stations(context, views, along, section.from.right, section, box.left, place.factor),
        inner.right);
    draw_section_sizes(
        sheet, context, box, Run::upright,
        section_stations(context, views, along, section.from.up, section, box.bottom, place.factor),
        inner.top);
    draw_caption(sheet, context, name + ", " + scale.text(), room);
}

void draw_sections(Sheet& sheet, const Context& context, const JointViews& views, const Rect& room) {
    const double middle = room.centre().x;
    const Frame& frame = views.joint().frame;
    draw_one_section(sheet, context, views, frame.v, "Section across",
                     {room.left, room.bottom, middle - edge / 2, room.top});
    draw_one_section(sheet, context, views, frame.u, "Section along",
                     {middle + edge / 2, room.bottom, room.right, room.top});
}

Table numbers_table(const Context& context, const JointKind& kind) {
    Table table{{{"size", Align::left, false}, {"", Align::right, true}}, {}, 2.5};
    for (const auto& [name, value] : kind.work.numbers)
        table.rows.push_back({{plain_words(name), quantity_figure(value, context.figures())}, false});
    for (const auto& [name, word] : kind.work.words) table.rows.push_back({{plain_words(name), word}, false});
    return table;
}

std::string alternative_text(const ToolNeed::Alternative& alternative, const FigureStyle& style) {
    std::string text = plain_words(alternative.tool);
    for (const auto& [name, size] : alternative.sizes)
        text += (name.empty() ? " " : " " + plain_words(name) + " ") + quantity_figure(size, style);
    return text;
}

std::vector<std::string> needs_of(const Context& context, const JointKind& kind) {
    std::vector<std::string> lines;
    for (const ToolNeed& need : kind.work.needs) {
        std::vector<std::string> words;
        for (const auto& alternative : need.alternatives)
            words.push_back(alternative_text(alternative, context.figures()));
        lines.push_back(capitalised(one_of(words)));
    }
    return lines;
}

std::vector<std::string> supplies_of(const JointKind& kind, const LengthStyle& style) {
    std::vector<std::string> lines;
    for (const Supply& supply : kind.work.supplies) {
        const std::string note = read_out(supply.note, style);
        const std::string what = to_text(supply.count) + " " + plain_words(supply.name);
        lines.push_back(what + (supply.count == 1 ? "" : "s") + (note.empty() ? "" : ", " + note));
    }
    return lines;
}

std::vector<FlowBlock> notes_of(const Context& context, const JointKind& kind) {
    std::vector<FlowBlock> blocks;
    const auto add = [&](const std::string& heading, std::vector<std::string> paragraphs) {
        if (!paragraphs.empty()) blocks.push_back({heading, std::move(paragraphs)});
    };
    add("Cut with", needs_of(context, kind));
    add("For each joint", supplies_of(kind, context.piece.style));
    std::vector<std::string> glue;
    for (const std::string& face : kind.glue) glue.push_back(plain_words(face));
    add("Glue", {glue.empty() ? "None" : capitalised(joined(glue))});
    add("Try", {"Cut one in spare wood first, and cut the second part to the first."});
    return blocks;
}

}  // namespace

std::vector<DistinctJoint> distinct_joints(const Piece& piece) {
    std::vector<DistinctJoint> found;
    for (std::size_t i = 0; i < piece.joint_kinds.size(); ++i) {
        const JointKind& kind = piece.joint_kinds[i];
        const auto same = [&](const DistinctJoint& other) {
            return same_work(piece[other.kind].work, kind.work);
        };
        auto at = std::find_if(found.begin(), found.end(), same);
        if (at == found.end()) at = found.insert(at, {static_cast<JointKindId>(i), {}});
        at->joints.insert(at->joints.end(), kind.joints.begin(), kind.joints.end());
    }
    return found;
}

Draft joint_sheet(const Context& context, const DistinctJoint& distinct) {
    const JointKind& kind = context.piece[distinct.kind];
    Draft draft = new_draft(context, "joints", "Joint, " + plain_words(kind.work.definition));
    Rect room = drawing_room(draft.sheet.frame).grown(-edge);
    room.top = draw_heading(draft.sheet, context, distinct, room);
    const JointViews views(context, context.piece[distinct.joints.front()]);
    const TableLayout table = lay_out_table(numbers_table(context, kind), 0.45 * room.width(), context.fonts);
    const double foot = std::min(0.34 * room.height(), std::max(height_from(table, {}), 0.2 * room.height()));
    draw_table(draft.sheet, table, {},
               {room.left, room.bottom, room.left + table.width(), room.bottom + foot});
    draw_flow(draft.sheet, notes_of(context, kind),
              {{room.left + 0.5 * room.width(), room.bottom, room.right, room.bottom + foot}}, 2.5,
              context.fonts);
    room.bottom += foot + edge;
    const double half = room.bottom + 0.62 * room.height();
    draw_pictorials(draft.sheet, context, views, {room.left, half, room.right, room.top});
    draw_sections(draft.sheet, context, views, {room.left, room.bottom, room.right, half - edge});
    return draft;
}

}  // namespace rodwright::packet
