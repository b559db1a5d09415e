#include "compiler/workplan/operations/done_work.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/workplan/operations/part_groups.hpp"

namespace rodwright {
namespace {

std::string step_word(const Operation& operation) {
    return (operation.work.empty() ? "" : operation.work + ".") + operation.name;
}

std::string mark_word(const DoneStep& mark) {
    return (mark.work.empty() ? "" : mark.work + ".") + mark.step;
}

bool names(const DoneStep& mark, const Operation& operation) {
    if (mark.work.empty() && find_stage(mark.step) == operation.stage) return true;
    return mark.step == operation.name && (mark.work.empty() || mark.work == operation.work);
}

// The parts of the item on which the mark says that it is done.
PartSet covered(const DoneStep& mark, const WorkItem& item) {
    if (mark.parts.empty()) return item.parts;
    PartSet parts(item.parts.size());
    for (const PartId part : mark.parts) parts.set(static_cast<std::size_t>(part));
    const bool whole = item.operation.glue_up.has_value();
    if (whole && !item.parts.is_subset_of(parts)) return PartSet(item.parts.size());
    return parts & item.parts;
}

// The item's work on some of its parts only.
WorkItem on_parts(const Piece& piece, const WorkItem& item, const PartSet& parts) {
    WorkItem result = item;
    Operation& operation = result.operation;
    const std::size_t all = item.parts.count();
    const std::size_t some = parts.count();
    operation.times = (operation.times * some + all - 1) / all;
    operation.labour.work = operation.labour.work * static_cast<Seconds>(some) / static_cast<Seconds>(all);
    operation.parts = part_list(parts);
    operation.kinds = kinds_of(piece, parts);
    result.parts = parts;
    return result;
}

Diagnostic no_such_work(const DoneStep& mark, const std::vector<WorkItem>& items) {
    const auto named =
        std::ranges::find_if(items, [&](const WorkItem& item) { return names(mark, item.operation); });
    if (named != items.end()) {
        return diagnose(Code::nothing_done, mark.where,
                        fmt::format("`{}` is not done to these parts", mark_word(mark)))
            .hint(named->operation.glue_up
                      ? "name all parts of the glue-up, as its step lists them"
                      : "name the parts that stand at the step, or leave out `on` for all of them");
    }
    std::vector<std::string> known;
    for (const WorkItem& item : items) {
        known.push_back(item.operation.name);
        known.push_back(step_word(item.operation));
    }
    const std::string near = nearest_name(mark_word(mark), std::move(known));
    return diagnose(Code::nothing_done, mark.where, fmt::format("there is no step `{}`", mark_word(mark)))
        .hint(near.empty() ? "write a step's title with `_` for its blanks, as `flatten_face`, or "
                             "`joint.step`"
                           : fmt::format("did you mean `{}`?", near));
}

}  // namespace

DoneWork set_aside_done(const Piece& piece, std::vector<WorkItem> items, Diagnostics& diagnostics) {
    std::vector<PartSet> done(items.size(), PartSet(piece.parts.size()));
    for (const DoneStep& mark : piece.done) {
        // A stage without any work is done by itself.
        bool found = mark.work.empty() && find_stage(mark.step).has_value();
        for (std::size_t i = 0; i < items.size(); ++i) {
            if (!names(mark, items[i].operation)) continue;
            const PartSet parts = covered(mark, items[i]);
            found = found || parts.any();
            done[i] |= parts;
        }
        if (!found) diagnostics.add(no_such_work(mark, items));
    }
    DoneWork result;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const PartSet left = items[i].parts - done[i];
        if (done[i].any()) result.done.push_back(on_parts(piece, items[i], done[i]).operation);
        if (done[i].none()) {
            result.left.push_back(std::move(items[i]));
        } else if (left.any()) {
            result.left.push_back(on_parts(piece, items[i], left));
        }
    }
    return result;
}

}  // namespace rodwright
