#include "compiler/workplan/glue_up/plan_glue_ups.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "compiler/workplan/glue_up/clamping.hpp"
#include "compiler/workplan/glue_up/fewest_stages.hpp"

namespace rodwright {
namespace {

std::vector<PartId> ids_of(const PartNumbers& numbers) {
    std::vector<PartId> ids;
    for (const std::size_t number : numbers) ids.push_back(static_cast<PartId>(number));
    return ids;
}

PartNumbers together(const PartNumbers& a, const PartNumbers& b) {
    PartNumbers all;
    std::ranges::set_union(a, b, std::back_inserter(all));
    return all;
}

// A glue-up that is still being added to, of one group.
struct Pending {
    GlueUp glue_up;
    Axis along{};          // of the clamps: square to where its joints meet
    bool pressed = false;  // clamped joints are in it, for which the glue must stay open
};

class GlueUpPlanner {
  public:
    GlueUpPlanner(const Piece& piece, const Blocking& blocking, const std::vector<Parting>& partings,
                  const Curing& curing)
        : piece_(piece), blocking_(blocking), partings_(partings), curing_(curing) {}

    std::vector<GlueUp> plan() {
        // Taking apart begins with the whole; putting together ends with it. A parting's groups come after it
        // in the list.
        std::map<PartNumbers, std::optional<Pending>> groups;
        for (auto parting = partings_.rbegin(); parting != partings_.rend(); ++parting) {
            std::optional<Pending> stays = std::exchange(groups[parting->stays], std::nullopt);
            std::optional<Pending> goes = std::exchange(groups[parting->goes], std::nullopt);
            groups[together(parting->goes, parting->stays)] =
                join(*parting, std::move(stays), std::move(goes));
        }
        for (auto& [group, pending] : groups) close(pending);
        return std::move(done_);
    }

  private:
    // The glue-up that the motion belongs to, if it closes a joint.
    std::optional<Pending> join(const Parting& parting, std::optional<Pending> stays,
                                std::optional<Pending> goes) {
        Pending own = closed_by({ids_of(parting.goes), ids_of(parting.stays), -parting.way, {}, {}});
        const BringIn& motion = own.glue_up.motions.front();
        if (motion.glued.empty() && motion.dry.empty()) {
            close(stays);
            close(goes);
            return std::nullopt;
        }
        if (!goes_with(stays, own)) close(stays);
        if (!goes_with(goes, own)) close(goes);
        // The larger one is done first where there is no time for both.
        if (time_for(stays) < time_for(goes)) std::swap(stays, goes);
        const Seconds needed = own.glue_up.open_needed;
        if (needed > 0 && needed + time_for(stays) + time_for(goes) > open()) close(stays);
        if (needed > 0 && needed + time_for(goes) > open()) close(goes);
        Pending joined;
        take_over(joined, stays);
        take_over(joined, goes);
        take_over(joined, own);
        joined.glue_up.parts = ids_of(together(parting.goes, parting.stays));
        return joined;
    }

    // What one motion closes.
    Pending closed_by(BringIn motion) const {
        Pending closed;
        closed.along = motion.way.axis;
        for (std::size_t i = 0; i < piece_.joints.size(); ++i)
            add_joint(static_cast<JointId>(i), motion, closed);
        closed.glue_up.joints = motion.glued.size();
        closed.glue_up.open_needed = closed.pressed ? spread(motion.glued.size()) : 0;
        closed.glue_up.motions.push_back(std::move(motion));
        return closed;
    }

    void add_joint(JointId id, BringIn& motion, Pending& closed) const {
        const Joint& joint = piece_[id];
        const JointKind& kind = piece_[joint.kind];
        if (kind.fastening || !across(motion, joint)) return;
        if (kind.glue.empty()) {
            motion.dry.push_back(id);
            return;
        }
        motion.glued.push_back(id);
        if (holds_by_itself(joint)) return;
        closed.pressed = true;
        closed.along = joint.frame.w.axis;
    }

    static bool across(const BringIn& motion, const Joint& joint) {
        bool moved = false;
        bool still = false;
        for (const JointMember& member : joint.members) {
            moved = moved || std::ranges::binary_search(motion.goes, member.part);
            still = still || std::ranges::binary_search(motion.to, member.part);
        }
        return moved && still;
    }

    // Once in, neither part can be drawn off square to where they meet: a dovetail in its socket.
    bool holds_by_itself(const Joint& joint) const {
        const auto a = static_cast<std::size_t>(joint.members[0].part);
        const auto b = static_cast<std::size_t>(joint.members[1].part);
        return blocking_.meets(a, b, joint.frame.w) && blocking_.meets(a, b, -joint.frame.w);
    }

    // What is without glue goes with anything.
    static bool goes_with(const std::optional<Pending>& pending, const Pending& own) {
        if (!pending || pending->glue_up.joints == 0 || own.glue_up.joints == 0) return true;
        return pending->along == own.along && pending->pressed == own.pressed;
    }

    Seconds spread(std::size_t joints) const {
        return static_cast<Seconds>(curing_.spread.get_d() * static_cast<double>(joints));
    }
    Seconds open() const { return static_cast<Seconds>(curing_.glue.open.get_d()); }
    static Seconds time_for(const std::optional<Pending>& pending) {
        return pending ? pending->glue_up.open_needed : 0;
    }

    static void take_over(Pending& joined, std::optional<Pending>& part) {
        if (part) take_over(joined, *part);
        part.reset();
    }

    static void take_over(Pending& joined, Pending& part) {
        for (BringIn& motion : part.glue_up.motions) joined.glue_up.motions.push_back(std::move(motion));
        if (joined.glue_up.joints == 0) joined.along = part.along;
        joined.pressed = joined.pressed || part.pressed;
        joined.glue_up.joints += part.glue_up.joints;
        joined.glue_up.open_needed += part.glue_up.open_needed;
    }

    void close(std::optional<Pending>& pending) {
        if (!pending) return;
        add_clamping(piece_, pending->along, pending->pressed, pending->glue_up);
        done_.push_back(std::move(pending->glue_up));
        pending.reset();
    }

    const Piece& piece_;
    const Blocking& blocking_;
    const std::vector<Parting>& partings_;
    const Curing& curing_;
    std::vector<GlueUp> done_;
};

}  // namespace

std::vector<GlueUp> plan_glue_ups(const Piece& piece, const Blocking& blocking, const TakenApart& apart,
                                  const Curing& curing) {
    const auto plan = [&](const std::vector<Parting>& partings) {
        return GlueUpPlanner(piece, blocking, partings, curing).plan();
    };
    return plan(
        fewest_stages(blocking, apart.partings, [&](const auto& partings) { return plan(partings).size(); }));
}

std::vector<GlueUp> one_glue_up(const Piece& piece) {
    GlueUp all;
    for (std::size_t i = 0; i < piece.parts.size(); ++i) all.parts.push_back(static_cast<PartId>(i));
    BringIn motion;
    for (std::size_t i = 0; i < piece.joints.size(); ++i) {
        const JointKind& kind = piece[piece.joints[i].kind];
        if (kind.fastening) continue;
        (kind.glue.empty() ? motion.dry : motion.glued).push_back(static_cast<JointId>(i));
    }
    if (motion.glued.empty() && motion.dry.empty()) return {};
    all.joints = motion.glued.size();
    all.motions.push_back(std::move(motion));
    return {all};
}

}  // namespace rodwright
