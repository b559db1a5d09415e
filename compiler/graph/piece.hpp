// The part/joint graph: what a design is once everything in it has a place. An immutable value; every later
// stage and every backend reads it and nothing else.
//
// Parts (instances) point at their kind. A kind is described in its own frame: x along the grain (its
// length), y its width, z its thickness, in millimetres, with the visible body between (0,0,0) and (length,
// width, thickness); `extend` says by how much joints lengthen it beyond (tenons). Directions and faces in a
// kind's frame reuse Axis and Face with wide = length, deep = width, tall = thickness.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "compiler/data/wood_mechanics.hpp"
#include "compiler/diagnostics/source.hpp"
#include "compiler/evaluate/glued_up.hpp"
#include "compiler/geometry/geometry.hpp"
#include "compiler/graph/phrase.hpp"
#include "compiler/quantity/format.hpp"
#include "compiler/quantity/quantity.hpp"

namespace rodwright {

enum class PartId : std::uint32_t { none = 0xffffffffU };
enum class KindId : std::uint32_t { none = 0xffffffffU };
enum class JointId : std::uint32_t { none = 0xffffffffU };
enum class JointKindId : std::uint32_t { none = 0xffffffffU };
enum class AssemblyId : std::uint32_t { none = 0xffffffffU };

// What is done to a part, in the order a solid is built: trims take away from the outside, blends round and
// bevels chamfer edges of what is then there, joints leave bodies beyond, and removals cut pockets.
enum class FeatureOp : std::uint8_t { trim, blend, bevel, leave, remove };

// An edge of the stock box, named by the two faces that meet in it.
struct BoxEdge {
    Face a{};
    Face b{};
    friend bool operator==(const BoxEdge&, const BoxEdge&) = default;
};

struct Feature {
    FeatureOp op{};
    Body body;                   // trim, leave, remove; in the kind's frame
    std::vector<BoxEdge> edges;  // blend, bevel
    Rational size;               // blend: radius; bevel: width on each face
    std::string made_by;         // the joint or shape's name
    std::string label;           // `round(1/8")`, as written, shortened
    JointKindId joint = JointKindId::none;
    Span where;  // the line of the design
};

// A cutter, tool or machine that work needs, and with what: `chisel 1/4"`, `straight_bit 1/4" reach 1"`.
struct ToolNeed {
    struct Alternative {
        std::string tool;
        std::vector<std::pair<std::string, Quantity>> sizes;  // name ("" for the first) and size
    };
    std::vector<Alternative> alternatives;
};

struct StepAfter {
    std::string step;
    Phrase because;
};

// What a machine is set to, and the sum that it comes from with its values filled in (empty where there is
// none).
struct StepSetting {
    std::string name;        // "fence"
    Phrase value;            // "7/16\""
    Phrase worked_out = {};  // "3/16\" + (3/4\" - 1/4\") / 2"
};

// A step as a joint or shape's definition writes it, with its texts filled in.
struct StepTemplate {
    std::string name;    // "lay_out", "cut"
    std::string member;  // the role whose part is worked on, or empty for all
    Phrase text;
    std::string machine;  // the word after `using`, or empty
    std::vector<StepSetting> settings;
    bool test_piece = false;
    std::vector<StepAfter> after;
    Phrase caution;
    Span where = {};                                   // in the definition
    std::optional<ToolNeed::Alternative> cutter = {};  // after `with`; else the machine's among the needs
};

struct Supply {
    std::string name;  // "button", "wood_screw"
    Rational count;    // for one use of the joint
    Phrase note;       // "1-1/4 in, number 8"
};

// One use of a shape on a part kind, or one distinct joint (same definition, same numbers).
struct Work {
    std::string definition;
    std::string doc;
    // What a maker sets out with: the parameters, and the lets that a step, tool or supply names, in order.
    // Quantities, and those that are words or none.
    std::vector<std::pair<std::string, Quantity>> numbers;
    std::vector<std::pair<std::string, std::string>> words;
    std::vector<ToolNeed> needs;
    std::vector<StepTemplate> steps;
    std::vector<Supply> supplies;
    Span defined_at;
};

struct ShapeUse {
    Work work;
    std::string label;  // `taper(to = 1-1/8", from_top = 5") on right face`
    Span where;
};

// A rotation about the piece's axes followed by a move: kind frame to piece frame. Never a reflection: a
// mirror image is a kind of its own.
struct Placement {
    Turn turn;
    Vector move;
};

struct Extent {
    Rational low;   // beyond 0
    Rational high;  // beyond the visible size
};

struct Kind {
    std::string letter;            // "A", "B1": stable name on every sheet
    std::string name;              // the part's name in the design: "side_apron"
    std::string wood;              // name of a Wood, or empty
    Vector size;                   // visible length, width, thickness
    std::array<Extent, 3> extend;  // along length, width, thickness
    std::vector<Feature> features;
    std::vector<ShapeUse> shapes;
    std::vector<PartId> parts;
    std::optional<KindId> mirror_of;  // the earlier kind of which this is the mirror image
    std::optional<GluedUp> glued;     // where the design glues a panel
    bool one_show_face = false;       // of its two broad faces one alone is seen, as the design says
    // By length, width and thickness: the size is taken from the work, and the part first cut over it by
    // this. Empty: it is cut to its size at once.
    std::array<std::optional<Rational>, 3> taken_over = {};
    Span where;

    // Overall size, joints included.
    Rational overall(Axis axis) const {
        const auto i = static_cast<std::size_t>(axis);
        return size[axis] + extend[i].low + extend[i].high;
    }

    // What it is first cut to.
    Rational cut(Axis axis) const {
        return overall(axis) + taken_over[static_cast<std::size_t>(axis)].value_or(0);
    }
};

struct Part {
    std::string name;      // "leg[left front]", "slat[3]"
    std::string declared;  // "leg"
    KindId kind = KindId::none;
    Placement placement;
    Box body;  // visible, in the piece's axes
    AssemblyId assembly = AssemblyId::none;
    Span where;
    bool made = false;  // it is cut from its board already, as the design says with `made` or `done`
};

enum class MemberForm : std::uint8_t { end, face, edge };

// How a fastener holds: a dowel by glue along it, a screw by its thread, a clip only against being lifted
// off.
enum class FastenerForm : std::uint8_t { dowel, screw, clip };

struct JointMember {
    std::string role;  // "tenon"
    PartId part = PartId::none;
    Face face{};  // of the part, in the piece's axes
    MemberForm form{};
};

// A pin, screw or clip of a joint: a cylinder in the joint's frame, from the meeting plane into the second
// member (into the first, where it runs towards -w).
struct Fastener {
    FastenerForm form{};
    Body body;
};

struct JointKind {
    Work work;
    bool fastening = false;
    std::vector<std::string> glue;  // "cheeks"; empty: no glue
    std::vector<JointId> joints;
};

// A way in which a joint lets its first member move against the second; without `by`, as far as it likes.
struct Freedom {
    Direction way;  // in the piece's axes
    std::optional<Rational> by;
};

// Members in the order of the definition. The frame's origin is the middle of the rectangle where they meet;
// w points from the first member into the second, v is along the first member's width (for a face: along its
// grain), u along its thickness.
struct Joint {
    JointKindId kind = JointKindId::none;
    std::vector<JointMember> members;
    Frame frame;  // in the piece's axes
    Rational contact_u;
    Rational contact_v;
    std::optional<Direction> slides;  // motion of the first member that closes the joint
    std::vector<Freedom> lets;
    // Where the members hold each other, in the piece's axes: what one leaves in the other, else the pockets
    // in the second, else where they meet.
    Box hold;
    std::vector<Fastener> fasteners;
    Span where;
};

struct Wood {
    std::string name;     // as the design calls it
    std::string species;  // key of stdlib/data/woods.yaml
    std::string common;   // "white ash"
    std::string cut;      // "quartered", "flat", "rift" or empty
    Rational density;     // kg/m^3 at 12 % moisture, 0 if unknown
    std::string colour;   // "#c8b089" for drawings
    bool sheet = false;   // plywood and the like
    // Change in size across the grain for each percent of moisture, as a part of the size: along the rays and
    // along the rings. Both 0 if unknown, and for sheet goods.
    Rational radial;
    Rational tangential;
    std::string caution;                          // what its dust or splinters do, or empty
    std::optional<WoodMechanics> mechanics = {};  // where they are known
};

struct Assembly {
    std::string name;
    AssemblyId parent = AssemblyId::none;
    Box box;
    std::optional<Rational> opens = {};  // how far it comes out to the front, as a drawer does
    Span where = {};
};

struct Load {
    Quantity force;
    PartId part = PartId::none;
    Face face{};
    std::string place;  // "middle", "edge", "end"
    Span where;
};

// What the piece is for, as the design says: `use seat for 2 on seat`.
struct Use {
    std::string what;    // "seat"; stdlib/data/loads.yaml has the words
    std::string detail;  // "books"; empty where there is none
    long people = 1;
    std::vector<PartId> on;  // empty: whatever part of the piece it fits
    Span where;
};

// Parts that are to come out of the same wood, in the order in which the design names them: from one board
// anywhere, next to one another along one board, or two as the leaves of one that is sawn open.
enum class MatchKind : std::uint8_t { one_board, sequence, book };

struct Match {
    MatchKind how{};
    std::vector<PartId> parts;
    Span where;
};

// What a part that is made measures, where somebody measured it; by the piece's axes.
struct MadeSize {
    std::vector<PartId> parts;
    std::array<std::optional<Rational>, 3> size;
    Span where;
};

// A step of the work that is done, on these parts.
struct DoneStep {
    std::string work;  // a joint's or shape's name; empty: of any, or of none
    std::string step;
    std::vector<PartId> parts;  // empty: all
    Span where;
};

// A finding that the maker has seen and lives with.
struct Accept {
    std::string code;  // "W1102"
    std::string because;
    Span where;
    std::vector<PartId> on = {};  // empty: wherever it is found
};

// The air that the piece will stand in through the year, and the moisture of the wood when it is made.
struct Climate {
    Rational driest = ratio(30, 100);   // relative humidity, 0 to 1
    Rational dampest = ratio(65, 100);  // the same
    Rational kelvin = ratio(29315, 100);
    Rational made_at = ratio(8, 100);  // moisture content, 0 to 1
    bool said = false;                 // by the design; otherwise these are a heated house and dry lumber
};

struct Finish {
    std::string name;
    int coats = 1;
};

struct Piece {
    std::string name;
    LengthStyle style;
    Box box;
    std::vector<Wood> woods;
    std::vector<Kind> kinds;
    std::vector<Part> parts;
    std::vector<JointKind> joint_kinds;
    std::vector<Joint> joints;
    std::vector<Assembly> assemblies;
    std::vector<Load> loads;
    std::vector<Use> uses;
    std::vector<Match> matches;  // of one wood and thickness each, none of sheet goods; a book has two
    std::vector<Finish> finishes;
    std::string glue;  // a glue of stdlib/data/glues.yaml; empty: the usual one
    Span glue_where;
    std::vector<MadeSize> made;
    std::vector<DoneStep> done;
    std::vector<Accept> accepts;
    Climate climate;
    std::vector<std::pair<std::string, Quantity>> params;  // the maker's parameters and their values now

    const Kind& operator[](KindId id) const { return kinds[static_cast<std::size_t>(id)]; }
    const Part& operator[](PartId id) const { return parts[static_cast<std::size_t>(id)]; }
    const Joint& operator[](JointId id) const { return joints[static_cast<std::size_t>(id)]; }
    const JointKind& operator[](JointKindId id) const { return joint_kinds[static_cast<std::size_t>(id)]; }
    const Wood* find_wood(const std::string& wood_name) const;
    bool is_of_sheet(const Kind& kind) const;
};

}  // namespace rodwright
