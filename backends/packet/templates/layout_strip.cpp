// Strips with the stations of a row, at full size: the story stick that is laid along a part to mark where
// the others meet it.
#include <algorithm>

#include "backends/drawing/dimension.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/templates/joint_face.hpp"
#include "backends/packet/templates/templates.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr std::size_t least_in_row = 3;
constexpr double strip_height = 18;

struct Socket {
    Extents face;  // where it is open, on the paper of the view
    Extents all;
    Rational depth;

    // One of a row: the same but for its place along the part.
    bool like(const Socket& other) const {
        return face.width() == other.face.width() && face.low.v == other.face.low.v &&
               face.high.v == other.face.high.v && depth == other.depth && all.width() == other.all.width();
    }
};

// Seen on the face that is met, the part's reference end on the left.
AxisView strip_view(const JointFace& face) {
    const AxisView front = lying(face.kind);
    return view_with(face.view.towards, front.right);
}

// Those of the joints in which that part is met by another.
std::vector<const Joint*> joints_with(const Piece& piece, const DistinctJoint& distinct, PartId part) {
    std::vector<const Joint*> found;
    for (const JointId id : distinct.joints) {
        const Joint& joint = piece[id];
        if (joint.members.size() > 1 && joint.members[1].part == part) found.push_back(&joint);
    }
    return found;
}

// What those joints take out of the face, in the order in which it comes.
std::vector<Socket> sockets_of(const JointFace& face, const std::vector<const Joint*>& joints,
                               const AxisView& view) {
    std::vector<Socket> sockets;
    for (const Feature& feature : face.kind.features) {
        const auto own = [&](const Joint* joint) { return joint->kind == feature.joint; };
        if (feature.op != FeatureOp::remove || std::none_of(joints.begin(), joints.end(), own)) continue;
        const BodyOutline body = body_outline(feature.body, view);
        if (body.front < face.level || body.back > face.level) continue;
        sockets.push_back({body.near, body.all(), Rational(face.level - body.back)});
    }
    std::sort(sockets.begin(), sockets.end(),
              [](const Socket& a, const Socket& b) { return a.face.low.u < b.face.low.u; });
    return sockets;
}

// The longest row among them: of sockets that are alike.
std::vector<Socket> row_of(const std::vector<Socket>& sockets) {
    std::vector<Socket> longest;
    for (const Socket& first : sockets) {
        std::vector<Socket> row;
        std::copy_if(sockets.begin(), sockets.end(), std::back_inserter(row),
                     [&](const Socket& other) { return other.like(first); });
        if (row.size() > longest.size()) longest = std::move(row);
    }
    return longest;
}

void draw_socket(Sheet& sheet, const Socket& socket, std::size_t number) {
    const double left = socket.face.low.u.get_d();
    const double right = socket.face.high.u.get_d();
    const double foot = strip_height - 7;
    sheet.line(LineRole::visible, {left, 0}, {left, strip_height});
    sheet.line(LineRole::visible, {right, 0}, {right, strip_height});
    // The trade's mark for wood that goes away.
    sheet.line(LineRole::dimension, {left, 0}, {right, foot});
    sheet.line(LineRole::dimension, {left, foot}, {right, 0});
    sheet.text(
        {std::to_string(number), FontFace::bold, 3, {(left + right) / 2, foot + 2}, Align::middle, false});
}

enum class Edges : std::uint8_t { both, first, none };

// The whole length, and of every place the edges that are wanted.
RunningDimension running(const Context& context, const std::vector<Socket>& row, const Extents& part,
                         Edges edges) {
    const double left = part.low.u.get_d();
    const double right = part.high.u.get_d();
    RunningDimension dimension{Run::across, 0, -6, left, {}, left + 3, right + 6};
    const auto add = [&](const Rational& place) {
        const Rational distance = place - part.low.u;
        dimension.stations.push_back({place.get_d(), figure(distance, context.figures())});
    };
    for (const Socket& socket : row) {
        if (edges != Edges::none && socket.face.low.u > part.low.u) add(socket.face.low.u);
        if (edges == Edges::both && socket.face.high.u < part.high.u) add(socket.face.high.u);
    }
    add(part.high.u);
    return dimension;
}

// As many figures as have room beside one another; the edges are drawn in any case.
RunningDimension fitting(const Context& context, const std::vector<Socket>& row, const Extents& part) {
    for (const Edges edges : {Edges::both, Edges::first}) {
        RunningDimension dimension = running(context, row, part, edges);
        if (fits(dimension, context.fonts)) return dimension;
    }
    return running(context, row, part, Edges::none);
}

void draw_strip(Sheet& sheet, const Context& context, const std::vector<Socket>& row, const Extents& part) {
    const double left = part.low.u.get_d();
    const double right = part.high.u.get_d();
    sheet.rectangle(LineRole::visible, {left, 0, right, strip_height});
    for (std::size_t i = 0; i < row.size(); ++i) draw_socket(sheet, row[i], i + 1);
    draw_running(sheet, fitting(context, row, part), context.fonts);
    sheet.fill(black, {{left, strip_height / 2},
                       {left - 3.2, strip_height / 2 + 1.6},
                       {left - 3.2, strip_height / 2 - 1.6}});
    sheet.text({"ref. end", FontFace::regular, 2.5, {left - 5, strip_height / 2}, Align::middle, true});
    draw_grain_arrow(sheet, {left, strip_height + 5});
}

// "E slat", each kind once.
std::string met_by(const Context& context, const std::vector<const Joint*>& joints) {
    std::vector<std::string> names;
    for (const Joint* joint : joints) {
        const Kind& first = context.piece[context.piece[joint->members[0].part].kind];
        std::string name = first.letter + " " + plain_words(first.name);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
    }
    return few_of(names);
}

std::optional<Template> strip_of(const Context& context, KindId id, const DistinctJoint& distinct) {
    const Kind& kind = context.piece[id];
    const std::vector<const Joint*> met = joints_with(context.piece, distinct, kind.parts.front());
    if (met.size() < least_in_row) return std::nullopt;
    const JointFace face = joint_face(context.piece, *met.front(), 1);
    if (face.view.towards.axis == Axis::wide) return std::nullopt;  // on its end there is no row
    const AxisView view = strip_view(face);
    const std::vector<Socket> row = row_of(sockets_of(face, met, view));
    if (row.size() < least_in_row) return std::nullopt;
    Sheet sheet;
    draw_strip(sheet, context, row, on_paper(view, visible_box(kind)));
    const std::string& definition = context.piece[distinct.kind].work.definition;
    std::vector<std::string> notes = {"Met by " + met_by(context, met) + ", " + std::to_string(row.size()) +
                                      " places, " + plain_words(definition) +
                                      ": running sizes from the reference end."};
    for (std::string& note : mirror_note(context, id)) notes.push_back(std::move(note));
    return captioned(context, kind.letter, plain_words(kind.name) + ", layout strip", notes, std::move(sheet),
                     file_name({kind.name, kind.letter, "strip", definition}));
}

}  // namespace

std::vector<Template> layout_strips(const Context& context) {
    const std::vector<DistinctJoint> distinct = distinct_joints(context.piece);
    std::vector<Template> found;
    for (std::size_t i = 0; i < context.piece.kinds.size(); ++i) {
        const Kind& kind = context.piece.kinds[i];
        if (kind.mirror_of || kind.parts.empty()) continue;
        for (const DistinctJoint& joints : distinct) {
            std::optional<Template> strip = strip_of(context, static_cast<KindId>(i), joints);
            if (strip) found.push_back(std::move(*strip));
        }
    }
    return found;
}

}  // namespace rodwright::packet
