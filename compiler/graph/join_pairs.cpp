#include "compiler/graph/join_pairs.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/evaluate/part_references.hpp"

namespace rodwright {

namespace {

class PairFinder {
  public:
    PairFinder(Draft& draft, const JoinStatement& statement) : draft_(draft), statement_(statement) {}

    std::vector<JoinPair> run() {
        for (const PartPattern& first : statement_.first) {
            for (const std::size_t part : matching(draft_.statements, first)) {
                for (const PartPattern& second : statement_.second) find(first, part, second);
            }
        }
        return std::move(pairs_);
    }

  private:
    Draft& draft_;
    const JoinStatement& statement_;
    std::vector<JoinPair> pairs_;

    const Instance& instance(std::size_t part) const { return draft_.statements.instances[part]; }
    const Box& body(std::size_t part) const { return draft_.parts[part].body; }

    // A face is written for the left, front or bottom copy: where a copy is the mirror image along the face's
    // axis and the reference did not choose it by name, the face is the opposite one.
    std::optional<Face> face_on(const PartPattern& pattern, std::size_t part) const {
        if (!pattern.face) return std::nullopt;
        const auto axis = static_cast<std::size_t>(axis_of(*pattern.face));
        return mirrored_axes(pattern, part)[axis] ? opposite(*pattern.face) : *pattern.face;
    }

    // Along which axes a part is the image of the copy that the reference was written for.
    std::array<bool, 3> mirrored_axes(const PartPattern& pattern, std::size_t part) const {
        std::array<bool, 3> result{};
        for (std::size_t axis = 0; axis < 3; ++axis) {
            result[axis] = pattern.hands[axis] < 0 && instance(part).hands[axis] == 1;
        }
        return result;
    }

    // Where both are handed along an axis and the second does not say which, it is the copy of the same hand.
    std::vector<std::size_t> candidates(std::size_t part, const PartPattern& second) const {
        PartPattern narrowed = second;
        for (std::size_t axis = 0; axis < 3; ++axis) {
            if (narrowed.hands[axis] < 0) narrowed.hands[axis] = instance(part).hands[axis];
        }
        std::vector<std::size_t> result = matching(draft_.statements, narrowed);
        result.erase(std::remove(result.begin(), result.end(), part), result.end());
        return result;
    }

    void find(const PartPattern& first, std::size_t part, const PartPattern& second) {
        if (!draft_.parts[part].usable) return;
        const std::optional<Face> face = face_on(first, part);
        const std::array<bool, 3> mirrored = mirrored_axes(first, part);
        std::vector<JoinPair> found;
        std::vector<std::size_t> tried;
        const std::size_t copies = draft_.statements.declarations[second.declaration].instances.size();
        if (!count_trials(draft_, second.row ? 1 : copies, statement_.syntax.span())) return;
        const std::vector<std::size_t> others = candidates(part, second);
        for (const std::size_t other : others) {
            if (!draft_.parts[other].usable) return;
            tried.push_back(other);
            for (Contact& contact : contacts(body(part), body(other), face, face_on(second, other))) {
                found.push_back({part, other, std::move(contact), mirrored});
            }
        }
        if (found.empty()) {
            report_apart(first, part, second, tried);
        } else if (found.size() > 1 && !statement_.fastening) {
            report_several(first, found);
        } else {
            std::move(found.begin(), found.end(), std::back_inserter(pairs_));
        }
    }

    std::string full_name(std::size_t part, std::optional<Face> face) const {
        const std::string& name = instance(part).name;
        return face ? fmt::format("`{}.{}`", name, face_name(*face)) : fmt::format("`{}`", name);
    }

    void report_apart(const PartPattern& first, std::size_t part, const PartPattern& second,
                      const std::vector<std::size_t>& tried) const {
        const std::optional<Face> face = face_on(first, part);
        const auto& declaration = draft_.statements.declarations[second.declaration];
        Diagnostic diagnostic =
            diagnose(Code::does_not_touch, first.where,
                     fmt::format("{} does not touch `{}`", full_name(part, face), declaration.name))
                .label(second.where, "the part it should meet");
        std::optional<Gap> nearest;
        std::size_t nearest_part = 0;
        // The nearest is only looked for where it is shown: that takes longer than to see that two do not
        // touch.
        constexpr std::size_t trials_for_gap = 4;
        const bool shown = !draft_.evaluator.diagnostics().full() &&
                           count_trials(draft_, trials_for_gap * tried.size(), statement_.syntax.span());
        for (const std::size_t other : shown ? tried : std::vector<std::size_t>()) {
            const Gap gap =
                face ? gap_between(body(part), *face, body(other)) : gap_between(body(part), body(other));
            if (nearest && abs(gap.amount) >= abs(nearest->amount)) continue;
            nearest = gap;
            nearest_part = other;
        }
        if (nearest) describe_gap(diagnostic, *nearest, nearest_part);
        draft_.evaluator.report(std::move(diagnostic));
    }

    void describe_gap(Diagnostic& diagnostic, const Gap& gap, std::size_t other) const {
        const std::string amount = format_length(abs(gap.amount), draft_.statements.style);
        const std::string& name = instance(other).name;
        if (gap.amount > 0) {
            diagnostic.notes.push_back(
                fmt::format("`{}` is nearest: {} away along `{}`", name, amount, axis_name(gap.axis)));
        } else if (gap.amount < 0) {
            diagnostic.notes.push_back(fmt::format("`{}` is nearest: they run {} into each other along `{}`",
                                                   name, amount, axis_name(gap.axis)));
        } else {
            diagnostic.notes.push_back(
                fmt::format("`{}` is nearest: they meet only in an edge or a corner", name));
        }
        diagnostic.help =
            fmt::format("move one of them by {} along `{}`, or correct the faces that the line names", amount,
                        axis_name(gap.axis));
    }

    void report_several(const PartPattern& first, const std::vector<JoinPair>& found) const {
        std::string names;
        for (const JoinPair& pair : found) {
            names += fmt::format("{}`{}` ({})", names.empty() ? "" : ", ", instance(pair.second).name,
                                 face_name(pair.contact.first));
        }
        draft_.evaluator.report(
            diagnose(Code::touches_several, first.where,
                     fmt::format("`{}` touches several: {}", instance(found.front().first).name, names))
                .hint("name the face that meets, as in `rail.left`, or the copy, as in `leg[front]`"));
    }
};

}  // namespace

std::vector<JoinPair> join_pairs(Draft& draft, const JoinStatement& statement) {
    return PairFinder(draft, statement).run();
}

}  // namespace rodwright
