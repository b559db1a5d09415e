// Does solid wood have the room that it takes through the year?
#include <fmt/format.h>

#include <set>

#include "compiler/check/checks.hpp"
#include "compiler/check/movement/change.hpp"
#include "compiler/check/movement/held_spans.hpp"
#include "compiler/check/movement/narrow_gaps.hpp"
#include "compiler/check/words.hpp"

namespace rodwright {

namespace {

constexpr double least_excess = 0.05;  // mm: nobody measures less
constexpr double least_change = 0.5;   // mm: what changes by less is not listed
constexpr const char* coefficients =
    "Wood Handbook, FPL-GTR-190, equation 13-2 and table 13-5 (wood_ways.yaml)";

class MovementCheck {
  public:
    MovementCheck(const CheckInput& input, Findings& findings)
        : piece_(input.piece),
          meshes_(input.meshes),
          seasons_(seasons_of(input.piece.climate)),
          findings_(findings) {}

    void run() {
        bool any = false;
        for (const Kind& kind : piece_.kinds) {
            if (!kind.mirror_of) any = number_widths(kind) || any;
        }
        const HeldSpans held = held_spans(piece_, seasons_);
        for (const HeldSpan& span : held.spans) look_at(span);
        if (held.left_from && *held.left_from < piece_.parts.size())
            report_left(piece_.parts[*held.left_from]);
        for (const NarrowGap& gap : narrow_gaps(piece_, meshes_)) look_at(gap);
        if (any || !told_.empty()) number_air();
    }

  private:
    const Piece& piece_;
    const std::vector<Mesh>& meshes_;
    Seasons seasons_;
    Findings& findings_;
    std::set<std::pair<KindId, Axis>> told_;  // of a kind, the first of its parts speaks for all

    static Quantity percent(double value) {
        Dimension dimension;
        dimension.ratio = RatioKind::percentage;
        return computed(value / 100, dimension);
    }
    std::string shown(double millimetres) const { return about(millimetres, piece_.style); }

    Number number(std::string title, double value) const {
        Number made;
        made.check = "movement";
        made.title = std::move(title);
        made.value = computed_length(value);
        made.formula = "size x change for each percent x difference in moisture";
        made.source = coefficients;
        return made;
    }

    void number_air() {
        for (const bool damp : {false, true}) {
            Number air;
            air.check = "movement";
            air.title =
                damp ? "moisture of the wood in the dampest air" : "moisture of the wood in the driest air";
            air.value = percent(damp ? seasons_.dampest : seasons_.driest);
            air.formula = "equilibrium moisture content of wood";
            Dimension ratio_of;
            ratio_of.ratio = RatioKind::percentage;
            air.inputs = {
                {"relative humidity", {damp ? piece_.climate.dampest : piece_.climate.driest, ratio_of}},
                {"temperature", {piece_.climate.kelvin, Dimension::of(Base::temperature)}},
                {"moisture when made", {piece_.climate.made_at, ratio_of}}};
            air.source = "Wood Handbook, FPL-GTR-282, equation 4-5";
            if (!piece_.climate.said)
                air.assumptions = {
                    "the design names no climate: a heated house, and lumber dried for furniture"};
            findings_.numbers.push_back(std::move(air));
        }
    }

    bool number_widths(const Kind& kind) {
        const std::optional<double> rate = change_per_percent(piece_, kind, Axis::deep);
        const double width = kind.overall(Axis::deep).get_d();
        if (!rate || *rate * width * (seasons_.rise() + seasons_.fall()) < least_change) return false;
        for (const bool damp : {false, true}) {
            const double moisture = damp ? seasons_.dampest : seasons_.driest;
            Number made =
                number(fmt::format("{}: width in the {} air", kind.name, damp ? "dampest" : "driest"),
                       width * (1 + *rate * (moisture - seasons_.made)));
            made.inputs = {{"width when made", computed_length(width)},
                           {"change for each percent", percent(100 * *rate)},
                           {"moisture then", percent(moisture)}};
            const Wood* wood = piece_.find_wood(kind.wood);
            if (wood != nullptr && wood->cut.empty())
                made.assumptions = {"flat-sawn: the design names no cut"};
            // Parts of one name may be of several kinds, and as wide.
            const auto said = [&](const Number& other) {
                return other.title == made.title && other.value == made.value;
            };
            if (std::ranges::none_of(findings_.numbers, said)) findings_.numbers.push_back(std::move(made));
        }
        return true;
    }

    void look_at(const HeldSpan& span) {
        const Part& part = piece_.parts[span.part];
        if (!told_.emplace(part.kind, kind_axis_of(part, span.axis)).second) return;
        if (span.growth * (seasons_.rise() + seasons_.fall()) >= least_change) number_span(part, span);
        if (excess(span, seasons_) > least_excess) report(part, span);
    }

    void look_at(const NarrowGap& gap) {
        const double swells = seasons_.rise() * gap.growth;
        if (swells <= gap.room + least_excess) return;
        const Part& part = piece_.parts[gap.part];
        const Part& other = piece_.parts[gap.other];
        findings_.diagnostics.add(
            diagnose(Code::no_room, part.where,
                     fmt::format(
                         "between `{}` and `{}` {} are left {}, and in the dampest air the wood swells by {}",
                         part.name, other.name, shown(gap.room), along_words(gap.axis), shown(swells)))
                .label(other.where, "beside this part")
                .hint("leave more room between them, or take quartered wood"));
    }

    void report_left(const Part& part) {
        findings_.diagnostics.add(diagnose(
            Code::not_tried, part.where,
            fmt::format("whether wood has room to move was not tried from `{}` on: the piece has {} joints",
                        part.name, piece_.joints.size())));
    }

    bool swelling_is_worse(const HeldSpan& span) const {
        return seasons_.rise() * span.growth - span.room_out >= seasons_.fall() * span.growth - span.room_in;
    }

    void number_span(const Part& part, const HeldSpan& span) {
        const bool swells = swelling_is_worse(span);
        const double room = swells ? span.room_out : span.room_in;
        Number made =
            number(fmt::format("{}: {} against what holds it", part.name, swells ? "swells" : "shrinks"),
                   span.growth * (swells ? seasons_.rise() : seasons_.fall()));
        if (room < any_room) made.limit = computed_length(room);
        made.inputs = {{"between the places where it is held", computed_length(span.span)}};
        if (span.fast)
            made.assumptions = {"what a glued joint across the grain stands is common practice, no source"};
        findings_.numbers.push_back(std::move(made));
    }

    void report(const Part& part, const HeldSpan& span) {
        const bool swells = swelling_is_worse(span);
        const std::string change = shown(span.growth * (swells ? seasons_.rise() : seasons_.fall()));
        const std::string moves = fmt::format("`{}` {} by {} {} in the {} air, and its joints ", part.name,
                                              swells ? "swells" : "shrinks", change, along_words(span.axis),
                                              swells ? "dampest" : "driest");
        const double room = swells ? span.room_out : span.room_in;
        Diagnostic finding =
            span.fast
                ? diagnose(Code::held_across, part.where, moves + "hold it fast over " + shown(span.span))
                      .hint("fasten it so that it can move, glue only the middle, or turn the grain")
                : diagnose(Code::no_room, part.where, moves + "leave it " + shown(room))
                      .hint("give it more room there, take quartered wood, or make it narrower");
        finding.labels.push_back({piece_.joints[span.low].where, "held here"});
        if (piece_.joints[span.high].where != piece_.joints[span.low].where)
            finding.labels.push_back({piece_.joints[span.high].where, "and here"});
        findings_.diagnostics.add(std::move(finding));
    }
};

}  // namespace

void check_movement(const CheckInput& input, Findings& findings) {
    MovementCheck(input, findings).run();
}

}  // namespace rodwright
