// Does the piece stand, by itself and under what is put on it?
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "compiler/check/checks.hpp"
#include "compiler/check/stability/tipping.hpp"
#include "compiler/check/stability/weight.hpp"

namespace rodwright {

namespace {

constexpr double gravity = 9.80665;  // m/s^2, by definition
constexpr double pound_force = 4.4482216152605;
constexpr double floor_slack = 0.5;  // mm: what is higher does not touch the floor
constexpr double least_angle = 1;    // degrees: what stands by less does not stand
// ASTM F2057-23, clothing storage units: what it covers (16 CFR 1261), and a child of 60 lb that hangs on the
// front, or 10 lbf pushed level at up to 56 in (the last from memory).
constexpr double covered_height = 27 * 25.4;
constexpr double covered_mass = 30 * 0.45359237;
constexpr double child = 60 * pound_force;
constexpr double push = 10 * pound_force;
constexpr double highest_push = 56 * 25.4;
constexpr const char* statics = "moments about the edges of the feet (statics)";

// How a piece is tried that people sit on or lean on: a weight near an edge of it, and a push outwards.
struct TipTest {
    std::string_view use;
    double down = 0;        // N
    double inset = 0;       // mm, from the edge
    double push = 0;        // N, outwards, at the height of the seat or top
    std::size_t sides = 0;  // of `sides` below, from the first
    const char* source;
};
constexpr std::array<TipTest, 3> tip_tests = {
    {{"seat", 600, 50, 20, 3,
      "ISO 7174-1:1988, clause 7.1: 600 N, 50 mm from the edge, forwards and sideways; the push of 20 N from "
      "EN 1022, "
      "from memory"},
     {"table", 400, 50, 0, 4, "EN 12521 with EN 1730, from memory: 200 to 400 N, 50 mm from the edge"},
     {"desk", 400, 50, 0, 4, "EN 12521 with EN 1730, from memory: 200 to 400 N, 50 mm from the edge"}}};

struct Side {
    const char* over;  // "it tips forwards"
    const char* edge;
    FloorPoint way;
};
constexpr std::array<Side, 4> sides = {{{"forwards", "front", {0, -1}},
                                        {"to the left", "left", {-1, 0}},
                                        {"to the right", "right", {1, 0}},
                                        {"backwards", "back", {0, 1}}}};

class StabilityCheck {
  public:
    StabilityCheck(const CheckInput& input, Findings& findings)
        : piece_(input.piece), weight_(weight_of(input.piece, input.meshes)), findings_(findings) {
        bounds_ = bounds_of(input.meshes.front());
        for (const Mesh& mesh : input.meshes) include(bounds_of(mesh));
        std::vector<FloorPoint> feet;
        for (const Mesh& mesh : input.meshes) add_feet(mesh, feet);
        standing_ = {edges_of(hull_of(std::move(feet))), weight_.kilograms * gravity, weight_.centre};
        standing_.centre[2] -= bounds_.low[2];
    }

    void run() {
        number("weight", computed(weight_.kilograms, Dimension::of(Base::mass)),
               "volumes of the solids (surfaces true to 0.1 mm) x densities of the woods at 12 % moisture");
        number("height of the centre of gravity", computed_length(standing_.centre[2]),
               "centres of the solids, by weight");
        if (!stands()) return;
        const double angle = tip_angle(standing_);
        number("least angle at which it falls by itself", computed(angle, Dimension::of(Base::angle)),
               statics);
        for (const Side& side : sides) number_side(side);
        if (angle < least_angle) return report_fall();
        for (const Load& load : piece_.loads) look_at(load);
        for (const Use& use : piece_.uses) look_at(use);
        advise_anchor();
    }

  private:
    const Piece& piece_;
    Weight weight_;
    Findings& findings_;
    Bounds bounds_;
    Standing standing_;

    void include(const Bounds& more) {
        for (std::size_t i = 0; i < 3; ++i) {
            bounds_.low[i] = std::min(bounds_.low[i], more.low[i]);
            bounds_.high[i] = std::max(bounds_.high[i], more.high[i]);
        }
    }

    void add_feet(const Mesh& mesh, std::vector<FloorPoint>& feet) const {
        for (const Triangle& triangle : mesh) {
            for (const Point3& corner : triangle.corners) {
                if (corner[2] < bounds_.low[2] + floor_slack) feet.push_back({corner[0], corner[1]});
            }
        }
    }

    // What stands on an edge is no piece that stands: a panel, a door.
    bool stands() const { return !standing_.edges.empty(); }

    double height() const { return bounds_.high[2] - bounds_.low[2]; }

    Number& number(std::string title, Quantity value, const char* formula) {
        Number made;
        made.check = "stability";
        made.title = std::move(title);
        made.value = std::move(value);
        made.formula = formula;
        made.source = "plain statics; densities from woods.yaml";
        made.assumptions = {"it stands free on a level floor, empty"};
        for (const std::string& name : weight_.guessed)
            made.assumptions.push_back(fmt::format("`{}` weighs 600 kg/m³: no wood is named", name));
        findings_.numbers.push_back(std::move(made));
        return findings_.numbers.back();
    }

    // The middle of the upper edge on that side.
    static FloorPoint edge_middle(const Bounds& top, const Side& side, double inset = 0) {
        FloorPoint at;
        for (std::size_t i = 0; i < 2; ++i) {
            const double middle = (top.low[i] + top.high[i]) / 2;
            at[i] = middle + side.way[i] * ((top.high[i] - top.low[i]) / 2 - inset);
        }
        return at;
    }

    void number_side(const Side& side) {
        const Dimension force = Dimension::of(Base::force);
        const double pushed = tip_force(standing_, side.way, height());
        if (std::isfinite(pushed))
            number(fmt::format("level push at the top that tips it {}", side.over), computed(pushed, force),
                   statics);
        const double loaded = tip_load(standing_, edge_middle(bounds_, side));
        if (std::isfinite(loaded))
            number(fmt::format("load on the {} edge that tips it", side.edge), computed(loaded, force),
                   statics);
    }

    void report_fall() {
        findings_.diagnostics.add(
            diagnose(Code::tips_over, piece_.parts.front().where,
                     "the piece falls over by itself: its weight does not stand over its feet")
                .hint("set the feet further apart, or accept it, as of a piece that hangs on the wall"));
    }

    // Where a load acts, seen from above. A weight on a side face hangs on its upper edge.
    FloorPoint place_of(const Load& load) const {
        const Box& body = piece_[load.part].body;
        FloorPoint at;
        for (const Axis axis : {Axis::wide, Axis::deep}) {
            const bool on_side = axis_of(load.face) == axis;
            const Rational middle = (body.low[axis] + body.high[axis]) / 2;
            at[static_cast<std::size_t>(axis)] = (on_side ? body.at(load.face) : middle).get_d();
        }
        return at;
    }

    void look_at(const Load& load) {
        const double least = tip_load(standing_, place_of(load));
        if (load.force.to_double() < least) return;
        const Quantity shown = computed(std::round(least), Dimension::of(Base::force));
        findings_.diagnostics.add(diagnose(Code::tips_over, load.where,
                                           fmt::format("this load tips the piece over: {} there are enough",
                                                       format_quantity(shown, piece_.style)))
                                      .hint("set the feet further out, or make what overhangs them shorter"));
    }

    // The parts that the design names, else the whole.
    Bounds carrying(const Use& use) const {
        if (use.on.empty()) return bounds_;
        const Box& body = piece_[use.on.front()].body;
        return {point3_of(body.low), point3_of(body.high)};
    }

    void look_at(const Use& use) {
        const auto test = std::ranges::find(tip_tests, use.what, &TipTest::use);
        if (test == tip_tests.end()) return;
        const Bounds top = carrying(use);
        for (std::size_t i = 0; i < test->sides; ++i) {
            const PutOn load{test->down, edge_middle(top, sides[i], test->inset)};
            try_test(*test, sides[i], load, top.high[2] - bounds_.low[2], use.where);
        }
    }

    void try_test(const TipTest& test, const Side& side, const PutOn& load, double high, Span where) {
        const Dimension force = Dimension::of(Base::force);
        const double pushed = tip_force(standing_, side.way, high, load);
        if (!std::isfinite(pushed)) return;
        Number& made =
            number(fmt::format("level push that tips it {}, with {:g} N on it {:g} mm from the {} edge",
                               side.over, test.down, test.inset, side.edge),
                   computed(pushed, force), statics);
        made.limit = computed(test.push, force);
        made.source = test.source;
        if (pushed > test.push) return;
        findings_.diagnostics.add(
            diagnose(Code::tips_over, where,
                     fmt::format("used as a {} it tips {}: {:g} N, {:g} mm from its {} edge{}", test.use,
                                 side.over, test.down, test.inset, side.edge,
                                 test.push > 0 ? fmt::format(" and a push of {:g} N", test.push) : ""))
                .note(test.source)
                .hint("set the feet further out on that side"));
    }

    void advise_anchor() {
        if (height() < covered_height || weight_.kilograms < covered_mass) return;
        const Side& front = sides.front();
        const bool child_tips = tip_load(standing_, edge_middle(bounds_, front)) < child;
        const bool push_tips = tip_force(standing_, front.way, std::min(height(), highest_push)) < push;
        if (!child_tips && !push_tips) return;
        findings_.diagnostics.add(
            diagnose(Code::wants_anchor, piece_.parts.front().where,
                     child_tips ? "a child of 60 lb that hangs on its front edge pulls the piece over"
                                : "a push of 10 lbf at its top tips the piece over")
                .note("by the tests for clothing storage units, ASTM F2057-23")
                .hint("fix it to the wall at its top, or make it deeper"));
    }
};

}  // namespace

void check_stability(const CheckInput& input, Findings& findings) {
    if (!input.meshes.empty()) StabilityCheck(input, findings).run();
}

}  // namespace rodwright
