#include "compiler/workplan/glue_up/glue_up_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <set>

#include "compiler/words.hpp"
#include "compiler/workplan/duration.hpp"
#include "compiler/workplan/operations/definition_work.hpp"
#include "compiler/workplan/operations/role_names.hpp"

namespace rodwright {
namespace {

using KindCounts = std::map<KindId, std::size_t>;

KindCounts kinds_among(const Piece& piece, const std::vector<PartId>& parts) {
    KindCounts counts;
    for (const PartId part : parts) ++counts[piece[part].kind];
    return counts;
}

// "left front leg A1" of `leg[left front]`.
std::string part_words(const Piece& piece, PartId id) {
    const Part& part = piece[id];
    const std::size_t bracket = part.name.find('[');
    std::string words = plain_words(part.declared);
    if (bracket != std::string::npos) {
        const std::string copy = part.name.substr(bracket + 1, part.name.size() - bracket - 2);
        const bool numbered = copy.find_first_not_of("0123456789") == std::string::npos;
        words = numbered ? words + " " + copy : copy + " " + words;
    }
    return words + " " + piece[part.kind].letter;
}

// Motions that follow one another, of the same kinds the same way.
struct SameMotions {
    const BringIn* first = nullptr;
    KindCounts goes;
    std::size_t count = 0;
};

std::vector<SameMotions> in_rows(const Piece& piece, const std::vector<BringIn>& motions) {
    std::vector<SameMotions> rows;
    for (const BringIn& motion : motions) {
        const KindCounts goes = kinds_among(piece, motion.goes);
        const bool same = !rows.empty() && motion.goes.size() == 1 && rows.back().goes == goes &&
                          rows.back().first->way == motion.way;
        if (same) {
            ++rows.back().count;
        } else {
            rows.push_back({&motion, goes, 1});
        }
    }
    return rows;
}

class GlueUpText {
  public:
    GlueUpText(const Piece& piece, const std::vector<GluedBefore>& before) : piece_(piece), before_(before) {}

    Phrase motion_line(const SameMotions& row) const {
        const BringIn& motion = *row.first;
        const std::string way(direction_words(motion.way));
        if (row.count > 1) {
            const Kind& kind = piece_[row.goes.begin()->first];
            return fmt::format("Bring in {} {} x {}, {}, one after the other.", kind.letter,
                               plain_words(kind.name), row.count, way);
        }
        return fmt::format("Bring {} to {}, {}.", group_words(motion.goes), group_words(motion.to), way);
    }

  private:
    // A part by its name, or what an earlier step made with the parts that have come to it since.
    std::string group_words(const std::vector<PartId>& parts) const {
        const auto made = std::ranges::find_if(before_, [&](const GluedBefore& each) {
            return std::ranges::includes(parts, each.glue_up->parts);
        });
        std::vector<PartId> rest = parts;
        std::vector<std::string> words;
        if (made != before_.end()) {
            rest.clear();
            std::ranges::set_difference(parts, made->glue_up->parts, std::back_inserter(rest));
            words.push_back(made->step ? fmt::format("what step {} made", *made->step)
                                       : "what is glued already");
        }
        constexpr std::size_t most_named = 4;
        if (rest.size() > most_named) {
            words.emplace_back("the rest");
        } else {
            for (const PartId part : rest) words.push_back(part_words(piece_, part));
        }
        return all_of(words);
    }

    const Piece& piece_;
    const std::vector<GluedBefore>& before_;
};

// How the definitions of its joints say that they are closed, once for each text.
void add_joint_lines(const Piece& piece, const GlueUp& glue_up, std::vector<Phrase>& lines) {
    std::set<JointKindId> kinds;
    for (const BringIn& motion : glue_up.motions) {
        for (const JointId joint : motion.glued) kinds.insert(piece[joint].kind);
        for (const JointId joint : motion.dry) kinds.insert(piece[joint].kind);
    }
    RoleNames names(piece.style);
    for (const JointKindId id : kinds) {
        const Work& work = piece[id].work;
        const auto closing =
            std::ranges::find_if(work.steps, [](const auto& step) { return closes_joint(step.name); });
        if (closing != work.steps.end()) {
            names.add(capitalised(plain_words(work.definition)) + ": ", closing->text);
        } else if (piece[id].glue.empty()) {
            names.add(capitalised(plain_words(work.definition)) + ": ", Phrase("no glue."));
        }
    }
    std::ranges::move(names.take(), std::back_inserter(lines));
}

Phrase clamp_line(const ClampUse& clamps) {
    static constexpr std::array<const char*, 3> along = {"from left to right", "from front to back",
                                                         "upright"};
    Phrase line(fmt::format("{}, {}, to reach ", counted(static_cast<std::size_t>(clamps.count), "clamp"),
                            along[static_cast<std::size_t>(clamps.along)]));
    line << Quantity::length(clamps.reach)
         << " with pads, in line with the parts that run that way; cauls where a joint is wide.";
    return line;
}

Phrase diagonal_line(const Diagonal& diagonal, const LengthStyle& style) {
    Phrase line("Square: both diagonals alike; corner to corner of ");
    // To the step that lengths are shown in: nobody measures it finer.
    const Rational step = style.unit == LengthUnit::inch ? Rational(style.step * inches(1)) : style.step;
    const Rational length = step * Rational(std::lround(diagonal.length / step.get_d()));
    line << Quantity::length(diagonal.a) << " by " << Quantity::length(diagonal.b) << " it is "
         << Quantity::length(length)
         << ". If not, set a clamp along the longer one while the glue gives. Sight for wind.";
    return line;
}

}  // namespace

std::vector<Phrase> glue_up_text(const Piece& piece, const GlueUp& glue_up,
                                 const std::vector<GluedBefore>& before, const GlueFacts& glue) {
    std::vector<Phrase> lines;
    const GlueUpText text(piece, before);
    for (const SameMotions& row : in_rows(piece, glue_up.motions)) {
        if (!row.goes.empty()) lines.push_back(text.motion_line(row));
    }
    add_joint_lines(piece, glue_up, lines);
    if (glue_up.open_needed > 0) {
        lines.emplace_back(fmt::format("{} to close in about {}; {} stays open for {}.",
                                       counted(glue_up.joints, "joint"), duration_words(glue_up.open_needed),
                                       plain_words(glue.name), duration_words(glue.open)));
    }
    for (const ClampUse& clamps : glue_up.clamps) lines.push_back(clamp_line(clamps));
    if (glue_up.diagonal) lines.push_back(diagonal_line(*glue_up.diagonal, piece.style));
    if (glue_up.joints > 0) {
        lines.emplace_back(
            fmt::format("Leave it {}{}, and do not strain it for {}.", duration_words(glue.clamp),
                        glue_up.clamps.empty() ? "" : " in the clamps", duration_words(glue.cure)));
    }
    return lines;
}

}  // namespace rodwright
