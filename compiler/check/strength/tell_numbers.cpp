#include <fmt/format.h>

#include <cmath>

#include "compiler/check/strength/closed_form.hpp"
#include "compiler/check/strength/tell.hpp"

namespace rodwright::strength {

namespace {

constexpr const char* own_page = "Wood Handbook, FPL-GTR-282 (2021)";

Quantity stress_value(double megapascals) {
    Dimension dimension = Dimension::of(Base::force);
    dimension.power[static_cast<std::size_t>(Base::length)] = -2;
    return computed(megapascals, dimension);
}

Quantity percentage(double share) {
    Dimension dimension = Dimension::number();
    dimension.ratio = RatioKind::percentage;
    return computed(share, dimension);
}

Quantity force_value(double newtons) {
    return computed(newtons, Dimension::of(Base::force));
}

class Teller {
  public:
    Teller(const Piece& piece, const Assessment& made, std::vector<Number>& numbers)
        : piece_(piece), made_(made), rules_(strength_data().rules), numbers_(numbers) {}

    void run() {
        for (const PartResult& each : worst_parts(piece_, made_.verdict)) stress(each);
        for (const ColumnResult& each : worst_columns(piece_, made_.verdict)) column(each);
        for (const JointResult& each : worst_joints(piece_, made_.verdict)) joint(each);
        for (const Sag& each : worst_sags(piece_, made_.verdict)) sag(each);
        for (const Sway& each : made_.verdict.sways) sway(each);
    }

  private:
    const Piece& piece_;
    const Assessment& made_;
    const Rules& rules_;
    std::vector<Number>& numbers_;

    Number number(std::string title, Quantity value, std::size_t in_case) const {
        const Case& loads = made_.cases[in_case];
        Number made;
        made.check = "strength";
        made.title = std::move(title);
        made.value = std::move(value);
        made.source = fmt::format("{}; load: {}", own_page, loads.source);
        made.assumptions = {
            disclaimer, fmt::format("load: {}, with the piece's own weight", loads.name),
            "a frame of elastic beams along the grain, wide parts as grillages; E_L is the tested "
            "modulus and a tenth",
            "the piece stands on its lowest faces; feet do not slide and turn freely"};
        if (!made_.settled) made.assumptions.emplace_back("where joints press was found only nearly");
        return made;
    }

    void add_strength_rules(Number& number, std::size_t in_case) const {
        std::string rule =
            fmt::format("mean strength of clear wood at 12 % moisture over {:g}", rules_.safety);
        if (made_.cases[in_case].lasting) rule += fmt::format(", and {:g} of it for years", rules_.lasting);
        number.assumptions.push_back(std::move(rule));
    }

    void stress(const PartResult& each) {
        Number made = number(fmt::format("`{}`: bending stress", piece_[each.part].name),
                             stress_value(each.stress), each.in_case);
        made.limit = stress_value(each.allowed);
        made.formula = "M / S with N / A (9-13), in the section that the solid has there";
        made.inputs = {
            {"from the part's end", computed_length(each.at)},
            {"modulus of rupture",
             stress_value(made_.structure.parts[static_cast<std::size_t>(each.part)]->elastic.wood.rupture)}};
        add_strength_rules(made, each.in_case);
        numbers_.push_back(std::move(made));
    }

    void column(const ColumnResult& each) {
        const PartModel& part = *made_.structure.parts[static_cast<std::size_t>(each.part)];
        Number made = number(fmt::format("`{}`: force along its grain", piece_[each.part].name),
                             force_value(each.force), each.in_case);
        made.limit = force_value(each.allowed);
        made.formula = "Ylinen's curve between crushing and Euler's load (9-25 to 9-28)";
        made.inputs = {{"slenderness L / r", computed(std::round(each.slenderness), Dimension::number())},
                       {"crushing strength", stress_value(part.elastic.wood.crushing)}};
        made.assumptions.emplace_back("the weakest section all along");
        made.assumptions.push_back(fmt::format(
            "a post sways at its head: {:g} times its length between hinges; others: their length",
            rules_.post_length));
        add_strength_rules(made, each.in_case);
        numbers_.push_back(std::move(made));
    }

    void joint(const JointResult& each) {
        Number made =
            number(fmt::format("joint of {}: share of its strength", joint_words(piece_, each.joint)),
                   percentage(each.use), each.in_case);
        made.limit = percentage(1);
        made.formula =
            fmt::format("elastic contacts of what the joint leaves, glues and holds: {}", each.mode);
        Dimension moment = Dimension::of(Base::force);
        moment.power[static_cast<std::size_t>(Base::length)] = 1;
        made.inputs = {{"force", force_value(each.force)}, {"moment", computed(each.moment, moment)}};
        made.assumptions.emplace_back(
            "joints are well made and dry; glue is as strong as the wood beside it");
        add_strength_rules(made, each.in_case);
        numbers_.push_back(std::move(made));
    }

    void sag(const Sag& each) {
        const Case& loads = made_.cases[each.in_case];
        const std::string title = fmt::format("`{}`: sag", piece_[each.part].name);
        Number made = number(title, computed_length(each.sag), each.in_case);
        made.limit = computed_length(each.span / rules_.sag_span);
        made.formula = "deflection of the frame, against the line through the part's ends";
        made.inputs = {{"span", computed_length(each.span)},
                       {fmt::format("finer limit, span / {:g}", rules_.sag_finer),
                        computed_length(each.span / rules_.sag_finer)}};
        if (loads.lasting)
            made.assumptions.push_back(
                fmt::format("creep: {:g} times the first sag after years", rules_.creep));
        numbers_.push_back(std::move(made));
        const auto& part = made_.structure.parts[static_cast<std::size_t>(each.part)];
        if (const auto bounds = bounds_of(piece_, *part, loads)) cross_check(title, *bounds, each);
    }

    void cross_check(const std::string& title, const SagBounds& bounds, const Sag& each) {
        const double creep = made_.cases[each.in_case].lasting ? rules_.creep : 1;
        Number made = number(title + " by the closed form, resting on its ends",
                             computed_length(creep * bounds.resting), each.in_case);
        made.formula = "kb W L^3 / (E I) + ks W L / (G A') (9-2)";
        made.inputs = {{"held fast at both ends", computed_length(creep * bounds.held_fast)},
                       {"by the frame", computed_length(each.sag)}};
        numbers_.push_back(std::move(made));
    }

    void sway(const Sway& each) {
        Number made = number(fmt::format("sway, {}", made_.cases[each.in_case].name),
                             computed_length(each.sway), each.in_case);
        made.limit = computed_length(each.height / rules_.sway_height);
        made.formula = "deflection of the frame where it is pushed";
        made.inputs = {{"height", computed_length(each.height)}};
        numbers_.push_back(std::move(made));
    }
};

}  // namespace

void tell_numbers(const Piece& piece, const Assessment& made, std::vector<Number>& numbers) {
    Teller(piece, made, numbers).run();
}

}  // namespace rodwright::strength
