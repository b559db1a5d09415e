#include "tests/support/sample_piece.hpp"

namespace rodwright {
namespace {

constexpr Direction wide{Axis::wide, true};
constexpr Direction deep{Axis::deep, true};
constexpr Direction tall{Axis::tall, true};

constexpr PartId left_leg{0};
constexpr PartId right_leg{1};
constexpr PartId rail{2};
constexpr PartId top{3};

Box box_of(Vector low, Vector high) {
    return {std::move(low), std::move(high)};
}

ShapeUse taper() {
    ShapeUse shape;
    shape.label = "taper(to = 1-1/8\", from_top = 5\") on inside faces";
    shape.work.definition = "taper";
    shape.work.numbers = {{"to", Quantity::length(inches(9, 8))}, {"from_top", Quantity::length(inches(5))}};
    shape.work.steps = {{"form",
                         "target",
                         "Saw the taper, 3/8\" off at the thin end.",
                         "table_saw",
                         {{"taper", "3/8\""}},
                         true,
                         {{"joinery", "square faces sit on fences and under clamps"}},
                         "Taper jig with clamps, hands off the work."}};
    return shape;
}

Kind leg_kind(std::string letter, PartId part, std::optional<KindId> mirror_of) {
    Kind kind;
    kind.letter = std::move(letter);
    kind.name = "leg";
    kind.wood = "ash";
    kind.size = {{inches(28), inches(3, 2), inches(3, 2)}};
    Feature trim;
    trim.op = FeatureOp::trim;
    trim.made_by = "taper";
    trim.label = "taper";
    trim.body.form = BodyForm::prism;
    trim.body.length = inches(3, 2);
    trim.body.profile = {{0, 0}, {inches(23), inches(3, 8)}, {inches(23), 0}};
    kind.features = {trim};
    kind.shapes = {taper()};
    kind.parts = {part};
    kind.mirror_of = mirror_of;
    return kind;
}

Kind rail_kind() {
    Kind kind;
    kind.letter = "B";
    kind.name = "front_rail";
    kind.wood = "ash";
    kind.size = {{inches(20), inches(9, 2), 19}};
    kind.extend[0] = {inches(9, 8), inches(9, 8)};
    Feature tenon;
    tenon.op = FeatureOp::leave;
    tenon.made_by = "mortise_and_tenon";
    tenon.label = "mortise_and_tenon";
    tenon.joint = JointKindId{0};
    tenon.body.size_u = inches(1, 4);
    tenon.body.size_v = inches(4);
    tenon.body.length = inches(9, 8);
    kind.features = {tenon, tenon};
    kind.parts = {rail};
    return kind;
}

Kind top_kind() {
    Kind kind;
    kind.letter = "C";
    kind.name = "top";
    kind.wood = "elm";
    kind.size = {{inches(30), inches(12), inches(3, 4)}};
    kind.glued = GluedUp{};
    kind.parts = {top};
    return kind;
}

Part part_of(std::string name, std::string declared, KindId kind, Placement placement, Box body) {
    Part part;
    part.name = std::move(name);
    part.declared = std::move(declared);
    part.kind = kind;
    part.placement = std::move(placement);
    part.body = std::move(body);
    return part;
}

std::vector<Part> sample_parts() {
    // Grain upward: the piece's tall axis is the kind's length.
    const Turn upright{{deep, tall, wide}};
    // Grain sideways, width upward; the thickness runs towards the front to keep the frame right-handed.
    const Turn on_edge{{wide, -tall, deep}};
    const Rational leg = inches(3, 2);
    const Rational high = inches(28);
    const Rational rail_low = inches(47, 2);
    return {part_of("leg[left]", "leg", KindId{0}, {upright, {{0, 0, 0}}},
                    box_of({{0, 0, 0}}, {{leg, leg, high}})),
            part_of("leg[right]", "leg", KindId{1}, {upright, {{inches(43, 2), 0, 0}}},
                    box_of({{inches(43, 2), 0, 0}}, {{inches(23), leg, high}})),
            part_of("front_rail", "front_rail", KindId{2}, {on_edge, {{leg, 25, rail_low}}},
                    box_of({{leg, 6, rail_low}}, {{inches(43, 2), 25, high}})),
            part_of("top", "top", KindId{3}, {Turn{}, {{inches(-7, 2), 0, high}}},
                    box_of({{inches(-7, 2), 0, high}}, {{inches(53, 2), inches(12), inches(115, 4)}}))};
}

JointKind tenon_kind() {
    JointKind kind;
    kind.glue = {"cheeks"};
    kind.joints = {JointId{0}, JointId{1}};
    kind.work.definition = "mortise_and_tenon";
    kind.work.numbers = {{"long", Quantity::length(inches(9, 8))}, {"thick", Quantity::length(inches(1, 4))}};
    kind.work.words = {{"haunch", "none"}};
    kind.work.steps = {
        {"lay_out", "", "Mark the shoulders 1 1/8\" from the end of front_rail.", "", {}, false, {}, ""},
        // The tenon stands first, as a careless definition might have it: the order comes from `after`.
        {"cut_tenon",
         "tenon",
         "Saw the shoulders, then the cheeks.",
         "table_saw",
         {{"height", "1/4\""}, {"stop", "1 1/8\""}},
         true,
         {{"cut_mortise", "the chisel fixes the width of the mortise"}},
         "Use the mitre gauge or sled."},
        {"cut_mortise",
         "mortise",
         "Cut the mortise 1/4\" wide.",
         "mortiser",
         {{"fence", "3/8\""}},
         true,
         {{"lay_out", "the knife lines say where it ends"}},
         "Hold-down close above the part."},
        {"fit",
         "",
         "Try the joint dry.",
         "",
         {},
         false,
         {{"cut_tenon", "a numbered pair finds its mate again"}},
         ""},
        {"glue",
         "",
         "Glue the cheeks and clamp.",
         "",
         {},
         false,
         {{"fit", "what does not close dry will not close wet"}},
         ""}};
    return kind;
}

JointKind button_kind() {
    JointKind kind;
    kind.fastening = true;
    kind.joints = {JointId{2}};
    kind.work.definition = "buttons";
    kind.work.supplies = {{"wood_screw", 3, "number 8, 1-1/4 in long"}, {"button", 3, "hardwood"}};
    kind.work.steps = {
        {"cut_slots",
         "rail",
         "Rout 3 slots.",
         "router",
         {{"depth", "3/8\""}},
         true,
         {{"lay_out", "the spacing starts at the shoulders"}},
         "Both hands on the router."},
        {"fasten",
         "",
         "Screw each button to the top.",
         "",
         {},
         false,
         {{"cut_slots", "the buttons sit in them"}, {"finishing", "the base cannot be reached later"}},
         ""}};
    return kind;
}

std::vector<Joint> sample_joints() {
    Joint left;
    left.kind = JointKindId{0};
    left.members = {{"tenon", rail, Face::left, MemberForm::end},
                    {"mortise", left_leg, Face::right, MemberForm::face}};
    left.frame = {{{inches(3, 2), ratio(31, 2), inches(103, 4)}}, deep, tall, -wide};
    left.contact_u = 19;
    left.contact_v = inches(9, 2);
    left.slides = -wide;
    Joint right = left;
    right.members = {{"tenon", rail, Face::right, MemberForm::end},
                     {"mortise", right_leg, Face::left, MemberForm::face}};
    right.frame = {{{inches(43, 2), ratio(31, 2), inches(103, 4)}}, deep, tall, wide};
    right.slides = wide;
    Joint buttons;
    buttons.kind = JointKindId{1};
    buttons.members = {{"top", top, Face::bottom, MemberForm::face},
                       {"rail", rail, Face::top, MemberForm::edge}};
    buttons.frame = {{{inches(23, 2), ratio(31, 2), inches(28)}}, deep, wide, -tall};
    buttons.contact_u = 19;
    buttons.contact_v = inches(20);
    return {left, right, buttons};
}

}  // namespace

Piece sample_piece() {
    Piece piece;
    piece.name = "Watch bench";
    piece.box = box_of({{inches(-7, 2), 0, 0}}, {{inches(53, 2), inches(12), inches(115, 4)}});
    piece.woods = {{"ash", "white_ash", "white ash", "quartered", 672, "#d9c6a0", false, 0, 0, ""},
                   {"elm", "red_elm", "red elm", "", 594, "#a67f58", false, 0, 0, ""}};
    piece.kinds = {leg_kind("A1", left_leg, std::nullopt), leg_kind("A2", right_leg, KindId{0}), rail_kind(),
                   top_kind()};
    piece.parts = sample_parts();
    piece.joint_kinds = {tenon_kind(), button_kind()};
    piece.joints = sample_joints();
    piece.finishes = {{"oil_varnish", 3}};
    piece.params = {{"length", Quantity::length(inches(30))}};
    return piece;
}

}  // namespace rodwright
