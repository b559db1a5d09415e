// Does the piece stand, by itself and under what is put on it?
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "compiler/check/check_data.hpp"
#include "compiler/check/checks.hpp"
#include "compiler/check/stability/opened.hpp"
#include "compiler/check/stability/tipping.hpp"
#include "compiler/check/stability/weight.hpp"

namespace rodwright {

namespace {

constexpr double floor_slack = 0.5;  // mm: what is higher does not touch the floor
constexpr const char* statics = "moments about the edges of the feet (statics)";

struct Side {
    const char* over;  // "it tips forwards"
    const char* edge;
    FloorPoint way;
};
// The last is a wall for many pieces.
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
        if (!feet.empty()) {
            const auto [front, back] =
                std::ranges::minmax(feet, {}, [](const FloorPoint& foot) { return foot[1]; });
            foot_depth_ = back[1] - front[1];
        }
        standing_ = {edges_of(hull_of(std::move(feet))), weight_.kilograms * standard_gravity,
                     weight_.centre};
        standing_.centre[2] -= bounds_.low[2];
        opened_ = opened(piece_, input.meshes, standing_, bounds_.low[2], limits_.storage.contents);
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
        if (angle < limits_.least_angle) return report_fall();
        for (const Load& load : piece_.loads) look_at(load);
        for (const Use& use : piece_.uses) look_at(use);
        if (!opened_.fronts.empty()) open_drawers();
        advise_anchor();
    }

  private:
    const Piece& piece_;
    Weight weight_;
    Findings& findings_;
    Bounds bounds_;
    Standing standing_;
    Opened opened_;
    double foot_depth_ = 0;
    const StandingLimits& limits_ = check_data().standing;

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
        const auto test = std::ranges::find(limits_.tests, use.what, &TipTest::use);
        if (test == limits_.tests.end()) return;
        const Bounds top = carrying(use);
        for (const Side& side : sides) {
            if (&side == &sides.back() && !test->backwards) break;
            const PutOn load{test->down, edge_middle(top, side, test->inset)};
            try_test(*test, side, load, top.high[2] - bounds_.low[2], use.where);
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

    // By how much the block of the test under its rear feet leans it.
    double lean() const {
        return std::atan2(limits_.storage.block, std::max(foot_depth_, 1.0)) * 180 / std::numbers::pi;
    }

    void open_drawers() {
        const double angle = tip_angle(opened_.full);
        Number& made = number("least angle at which it falls with its drawers out and full",
                              computed(angle, Dimension::of(Base::angle)), statics);
        made.limit = computed(limits_.least_angle, Dimension::of(Base::angle));
        made.source = limits_.storage.source + "; the angle is common practice";
        made.assumptions = {
            "all drawers out at once; every litre of their boxes holds clothes, 136 g (8.5 lb/ft³)"};
        if (angle >= limits_.least_angle) return;
        findings_.diagnostics.add(
            diagnose(Code::tips_over, opened_.fronts.front().where,
                     "with its drawers out and full the piece falls over by itself")
                .note("by the test for " + limits_.storage.source)
                .hint("let the drawers come out less far, make it deeper or heavier below, and fix it to the "
                      "wall at its top"));
    }

    // A child on the front edge of the piece, or on each drawer with all of them out and the test's block
    // under the rear feet. The worst of them.
    struct Climbing {
        double least = 0;  // N that tip it
        double pull = 0;   // N on an anchor at its top, level, so that the child does not
        std::string on;
    };
    Climbing climbing() const {
        if (opened_.fronts.empty())
            return climbing_on({"its front edge", edge_middle(bounds_, sides.front()), 0, {}}, standing_, 0);
        Climbing worst;
        for (const DrawerFront& front : opened_.fronts) {
            Climbing each = climbing_on(front, opened_.empty, lean());
            if (worst.on.empty() || each.least < worst.least) worst = std::move(each);
        }
        worst.on = "`" + worst.on + "`, with all drawers out,";
        return worst;
    }

    Climbing climbing_on(const DrawerFront& front, const Standing& standing, double leaning) const {
        Climbing made{tip_load(standing, front.at, front.height, leaning), 0, front.name};
        if (!std::isfinite(made.least) || made.least >= limits_.storage.child.to_double()) return made;
        double edge = bounds_.high[1];
        for (const TipEdge& each : standing.edges) edge = std::min(edge, each.on[1]);
        made.pull = (limits_.storage.child.to_double() - made.least) * (edge - front.at[1]) / height();
        return made;
    }

    void advise_anchor() {
        const StorageTest& test = limits_.storage;
        if (height() < test.least_height || weight_.kilograms < test.least_mass) return;
        const Side& front = sides.front();
        const Climbing child = climbing();
        if (!opened_.fronts.empty()) number_climbing(child);
        const bool child_tips = child.least < test.child.to_double();
        const double pushed = tip_force(opened_.empty, front.way, std::min(height(), test.push_height));
        if (!child_tips && pushed >= test.push.to_double()) return;
        const auto shown = [&](const Quantity& force) { return format_quantity(force, piece_.style); };
        std::string anchor = "fix it to the wall at its top, or make it deeper";
        if (child_tips && child.pull > 0) {
            const Quantity pull = computed(std::ceil(child.pull), Dimension::of(Base::force));
            anchor = fmt::format(
                "fix it to the wall at its top with an anchor that holds a good deal more than {}, or make "
                "it "
                "deeper",
                shown(pull));
        }
        const std::string found =
            child_tips ? fmt::format("a child's weight of {} on {} pulls the piece over", shown(test.child),
                                     child.on)
                       : fmt::format("a push of {} at its top tips the piece over", shown(test.push));
        findings_.diagnostics.add(diagnose(Code::wants_anchor, piece_.parts.front().where, found)
                                      .note("by the tests for " + test.source)
                                      .hint(std::move(anchor)));
    }

    void number_climbing(const Climbing& child) {
        if (!std::isfinite(child.least)) return;
        const Dimension force = Dimension::of(Base::force);
        Number& made =
            number(fmt::format("weight on {} that tips it", child.on), computed(child.least, force), statics);
        made.limit = limits_.storage.child;
        made.inputs = {
            {"lean by the block under the rear feet", computed(lean(), Dimension::of(Base::angle))}};
        made.source = limits_.storage.source;
        made.assumptions = {"empty, all drawers out at once; the weight hangs on the front's upper edge"};
    }
};

}  // namespace

void check_stability(const CheckInput& input, Findings& findings) {
    if (!input.meshes.empty()) StabilityCheck(input, findings).run();
}

}  // namespace rodwright
