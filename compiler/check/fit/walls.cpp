// Wood that is left beside pockets: joints cut into each other, walls too thin, pockets that come out where a
// shape took the wood away, and trenches too near to an end.
#include <fmt/format.h>

#include <algorithm>

#include "compiler/at_once.hpp"
#include "compiler/check/check_data.hpp"
#include "compiler/check/checks.hpp"
#include "compiler/check/fit/pockets.hpp"
#include "compiler/check/movement/change.hpp"
#include "compiler/check/words.hpp"

namespace rodwright {

namespace {

constexpr double rounding = 1e-3;

class WallCheck {
  public:
    WallCheck(const CheckInput& input, Findings& findings) : input_(input), findings_(findings) {}

    // The walls of all kinds at once, what is to say of them in order. A mirror image is like its first.
    void run() {
        const std::vector<Kind>& kinds = input_.piece.kinds;
        std::vector<std::vector<Pocket>> pockets(kinds.size());
        std::vector<std::vector<Wall>> walls(kinds.size());
        at_once(kinds.size(), [&](std::size_t i) {
            const Mesh& mesh = input_.meshes[static_cast<std::size_t>(kinds[i].parts.front())];
            if (kinds[i].mirror_of || mesh.empty()) return;
            pockets[i] = pockets_of(input_.piece, first_part(kinds[i]));
            walls[i] = walls_of(pockets[i], mesh);
        });
        for (std::size_t i = 0; i < kinds.size(); ++i) look_at(kinds[i], walls[i]);
    }

  private:
    const CheckInput& input_;
    Findings& findings_;
    const FitLimits& limits_ = check_data().fit;

    std::string shown(double millimetres) const { return about(millimetres, input_.piece.style); }

    const Part& first_part(const Kind& kind) const { return input_.piece[kind.parts.front()]; }

    void look_at(const Kind& kind, const std::vector<Wall>& walls) {
        const Part& part = first_part(kind);
        const double least =
            std::min(limits_.thinnest_wall, limits_.wall_share * kind.size[Axis::tall].get_d());
        for (const Wall& wall : walls) {
            const bool thin = wall.thick < least - rounding;
            if (thin) report_thin(part, wall);
            if (!thin && is_short_grain(part, wall)) report_short_grain(part, wall);
        }
        number(part, walls, least);
    }

    // The least wall of each part stands for all.
    void number(const Part& part, const std::vector<Wall>& walls, double limit) {
        const auto least = std::ranges::min_element(walls, {}, &Wall::thick);
        if (least == walls.end()) return;
        Number made;
        made.check = "walls";
        made.title = fmt::format("{}: least wood beside a pocket", part.declared);
        made.value = computed_length(least->thick);
        made.limit = computed_length(limit);
        made.formula = "rays through the part's solid, nine from each side of each pocket";
        made.source = "the limit is common practice, no source";
        findings_.numbers.push_back(std::move(made));
    }

    void report_thin(const Part& part, const Wall& wall) {
        const Feature& feature = *wall.pocket->feature;
        if (wall.beyond != nullptr && !same_work(feature, *wall.beyond->feature)) {
            report_meeting(part, wall);
        } else if (wall.thick > 0) {
            findings_.diagnostics.add(
                diagnose(Code::thin_wall, feature.where,
                         fmt::format("`{}` leaves a wall of {} in `{}`, on the {} side of its pocket",
                                     feature.made_by, shown(wall.thick), part.name, face_name(wall.side)))
                    .label(part.where, "in this part")
                    .hint("move the pocket, make it narrower or shallower, or the part thicker"));
        } else {
            findings_.diagnostics.add(
                diagnose(
                    Code::breaks_through, feature.where,
                    fmt::format("the pocket of `{}` comes out of `{}` on its {} side, where a shape took the "
                                "wood away",
                                feature.made_by, part.name, face_name(wall.side)))
                    .label(part.where, "in this part")
                    .hint("make the pocket shallower, or keep the shape away from it"));
        }
    }

    void report_meeting(const Part& part, const Wall& wall) {
        const Feature& feature = *wall.pocket->feature;
        const Feature& other = *wall.beyond->feature;
        const std::string what =
            wall.thick > 0 ? fmt::format("`{}` and `{}` leave {} of wood between them in `{}`",
                                         feature.made_by, other.made_by, shown(wall.thick), part.name)
                           : fmt::format("`{}` and `{}` are cut into each other in `{}`", feature.made_by,
                                         other.made_by, part.name);
        // Seen from both pockets it is one finding, at the line that comes first.
        const bool first = feature.where.begin <= other.where.begin;
        findings_.diagnostics.add(diagnose(Code::joints_meet, first ? feature.where : other.where, what)
                                      .label(first ? other.where : feature.where, "the other one")
                                      .label(part.where, "in this part")
                                      .hint("make one of them shallower, or move it along the part"));
    }

    // Before the part's end, beside a trench across its grain.
    bool is_short_grain(const Part& part, const Wall& wall) const {
        const Axis along = axis_of(wall.side);
        if (wall.beyond != nullptr || kind_axis_of(part, along) != Axis::wide) return false;
        const Axis into = axis_of(wall.pocket->entry);
        if (into == along) return false;
        const auto across = static_cast<Axis>(3 - static_cast<int>(along) - static_cast<int>(into));
        return wall.pocket->size(across) >= limits_.trench_share * part.body.size(across).get_d() &&
               wall.thick < wall.pocket->size(into) - rounding;
    }

    void report_short_grain(const Part& part, const Wall& wall) {
        const Feature& feature = *wall.pocket->feature;
        findings_.diagnostics.add(
            diagnose(Code::short_grain, feature.where,
                     fmt::format(
                         "between the trench of `{}`, {} deep, and the {} end of `{}` only {} of short grain "
                         "is left",
                         feature.made_by, shown(wall.pocket->size(axis_of(wall.pocket->entry))),
                         face_name(wall.side), part.name, shown(wall.thick)))
                .label(part.where, "in this part")
                .hint("move the trench away from the end, or make it shallower; at an end a rabbet or tenon "
                      "holds "
                      "better"));
    }
};

}  // namespace

void check_walls(const CheckInput& input, Findings& findings) {
    WallCheck(input, findings).run();
}

}  // namespace rodwright
