#include "compiler/assembly/check_assembly.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/assembly/locks.hpp"
#include "compiler/assembly/placed_meshes.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

namespace {

constexpr double least_shared = 1e-3;  // mm^3
constexpr std::size_t most_named = 6;

std::string direction_words(Direction way) {
    constexpr std::array<std::array<const char*, 2>, 3> words = {
        {{"to the left", "to the right"}, {"forwards", "backwards"}, {"downwards", "upwards"}}};
    return words[static_cast<std::size_t>(way.axis)][way.positive ? 1 : 0];
}

class AssemblyCheck {
  public:
    AssemblyCheck(const Piece& piece, SolidStore& solids, Diagnostics& diagnostics)
        : piece_(piece),
          kernel_(*solids.kernel()),
          placed_(solids.placed()),
          blocking_(placed_meshes(piece, solids)),
          diagnostics_(diagnostics) {}

    void run() {
        for (const PartNumbers& locked : take_apart(blocking_).locked) {
            if (!report_shared_wood(locked)) report_lock(smallest_lock(blocking_, locked));
        }
    }
    bool complete() const { return placed_.size() == piece_.parts.size(); }

  private:
    const Piece& piece_;
    const SolidKernel& kernel_;
    std::vector<PlacedSolid> placed_;
    Blocking blocking_;
    Diagnostics& diagnostics_;

    std::string name(std::size_t part) const { return piece_.parts[part].name; }

    // Parts that are in one another meet whichever way one of them goes.
    bool may_share(std::size_t a, std::size_t b) const {
        return std::ranges::all_of(all_ways, [&](Direction way) { return blocking_.meets(a, b, way); });
    }

    bool report_shared_wood(const PartNumbers& locked) {
        bool any = false;
        for (std::size_t i = 0; i < locked.size(); ++i) {
            for (std::size_t j = i + 1; j < locked.size(); ++j) {
                if (!may_share(locked[i], locked[j])) continue;
                const double shared = kernel_.overlap(placed_[locked[i]], placed_[locked[j]]);
                if (shared <= least_shared) continue;
                any = true;
                report_pair(locked[i], locked[j], shared);
            }
        }
        return any;
    }

    void report_pair(std::size_t a, std::size_t b, double shared) {
        const bool inch = piece_.style.unit == LengthUnit::inch;
        const double shown = shared / (inch ? 25.4 * 25.4 * 25.4 : 1000);
        diagnostics_.add(
            diagnose(Code::run_into, piece_.parts[b].where,
                     fmt::format("`{}` and `{}` run into each other: they share {:.2g} {} of wood", name(a),
                                 name(b), shown, inch ? "cubic inches" : "cm\u00b3"))
                .label(piece_.parts[a].where, "with this part")
                .hint("join them, or change a size or a place so that they only touch"));
    }

    void report_lock(const PartNumbers& locked) {
        std::string names;
        for (std::size_t i = 0; i < std::min(locked.size(), most_named); ++i)
            names += fmt::format("{}`{}`", i == 0 ? "" : ", ", name(locked[i]));
        if (locked.size() > most_named) names += fmt::format(" and {} more", locked.size() - most_named);
        Diagnostic finding =
            diagnose(Code::locked, piece_.parts[locked.front()].where,
                     "these parts lock each other, so that none can be brought in last: " + names);
        for (const Opening& opening : releases(blocking_, locked, openings(piece_))) {
            finding.help = fmt::format("it would go together if `{}` could slide out of `{}` {}",
                                       name(opening.goes), name(opening.stays), direction_words(opening.way));
            break;
        }
        diagnostics_.add(std::move(finding));
    }
};

}  // namespace

void check_assembly(const Piece& piece, SolidStore& solids, Diagnostics& diagnostics) {
    if (piece.parts.size() < 2) return;
    if (piece.parts.size() > limits::tried_parts) {
        diagnostics.add(
            diagnose(Code::not_tried, piece.parts.front().where,
                     fmt::format("whether the parts go together was not tried: there are {}, and {} "
                                 "is the most that are tried",
                                 piece.parts.size(), limits::tried_parts)));
        return;
    }
    if (solids.kernel() == nullptr) return;
    AssemblyCheck check(piece, solids, diagnostics);
    if (check.complete()) check.run();
}

}  // namespace rodwright
