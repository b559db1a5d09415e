#include "compiler/workplan/plan_work.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "compiler/words.hpp"
#include "compiler/workplan/glue_up/check_glue_ups.hpp"
#include "compiler/workplan/glue_up/glue_up_text.hpp"
#include "compiler/workplan/glue_up/plan_glue_ups.hpp"
#include "compiler/workplan/operations/collect.hpp"
#include "compiler/workplan/operations/done_work.hpp"
#include "compiler/workplan/operations/notes.hpp"
#include "compiler/workplan/order/clamp_order.hpp"
#include "compiler/workplan/order/reasons.hpp"
#include "compiler/workplan/order/work_order.hpp"
#include "compiler/workplan/schedule/schedule.hpp"
#include "compiler/workplan/set_ups/set_ups.hpp"

namespace rodwright {
namespace {

using schedule::Timetable;

std::vector<GlueUp> glue_ups_of(const Piece& piece, const std::optional<AssemblyFacts>& assembly,
                                const Curing& curing) {
    if (!assembly || !assembly->apart.locked.empty()) return one_glue_up(piece);
    return plan_glue_ups(piece, assembly->blocking, assembly->apart, curing);
}

std::vector<GlueUp> left_to_glue(const std::vector<GlueUp>& glue_ups, const std::vector<WorkItem>& items) {
    std::vector<GlueUp> left;
    for (const WorkItem& item : items) {
        if (item.operation.glue_up) left.push_back(glue_ups[*item.operation.glue_up]);
    }
    return left;
}

schedule::Problem problem_of(const std::vector<WorkItem>& items, const std::vector<SetUp>& set_ups,
                             const std::vector<OrderEdge>& edges, const WorkOptions& options) {
    schedule::Problem problem;
    std::map<std::string, std::size_t> machines;
    for (const SetUp& set_up : set_ups)
        problem.set_ups.push_back(
            {machines.try_emplace(set_up.machine, machines.size()).first->second, set_up.time});
    for (std::size_t i = 0; i < items.size(); ++i) {
        const Operation& operation = items[i].operation;
        schedule::Job job;
        job.work = operation.labour.work + (operation.set_up ? 0 : operation.labour.set_up);
        job.set_up = operation.set_up;
        job.rank = static_cast<std::size_t>(operation.stage) * items.size() + i;
        // What is handled is the stack of parts that goes from one machine or the bench to the next place.
        job.parts = {operation.set_up ? problem.set_ups[*operation.set_up].machine : machines.size()};
        job.rest = operation.wait;
        problem.jobs.push_back(std::move(job));
    }
    for (const OrderEdge& edge : edges) problem.precedences.push_back({edge.before, edge.after, edge.wait});
    problem.workers = options.workers;
    problem.day = options.day;
    // A plan that much longer is as good, and set up less often.
    problem.tolerance = 3;
    return problem;
}

// What is left alone after an item, as the least of what its successors ask for.
void set_waits(std::vector<WorkItem>& items, const std::vector<OrderEdge>& edges) {
    for (const OrderEdge& edge : edges) {
        Seconds& wait = items[edge.before].operation.wait;
        if (edge.wait > 0 && (wait == 0 || edge.wait < wait)) wait = edge.wait;
    }
}

std::string bound_words(schedule::Bound::Reason reason) {
    switch (reason) {
        case schedule::Bound::Reason::chain:
            return "the longest chain of work and waiting";
        case schedule::Bound::Reason::work:
            return "all work, with each set-up made once";
        case schedule::Bound::Reason::between:
            return "work that all lies between what must come before it and what must follow";
    }
    return "";
}

// Twice as wide and ten times as long as usual: a list of some sixty operations is worth a tenth of a second.
constexpr schedule::Effort effort{32, 600};

WorkSums sums_of(const Timetable& timetable, const std::vector<WorkItem>& items, const WorkOptions& options) {
    WorkSums sums;
    sums.workers = options.workers;
    sums.day = options.day;
    for (const schedule::Entry& entry : timetable.entries)
        sums.hands += (entry.work_begins - entry.begin) + items[entry.job].operation.labour.work +
                      (items[entry.job].operation.set_up ? 0 : items[entry.job].operation.labour.set_up);
    sums.makespan = timetable.makespan;
    sums.makespan_bound = timetable.bound.makespan;
    sums.bound_reason = bound_words(timetable.bound.reason);
    sums.set_ups = timetable.set_ups;
    sums.set_ups_bound = timetable.bound.set_ups;
    sums.assumed =
        std::ranges::any_of(items, [](const WorkItem& item) { return item.operation.labour.assumed; });
    return sums;
}

std::vector<Number> numbers_of(const Piece& piece, const std::vector<WorkItem>& items) {
    std::vector<MachineLimit> limits;
    for (const WorkItem& item : items) limits.insert(limits.end(), item.limits.begin(), item.limits.end());
    return machine_numbers(piece, limits);
}

std::string stage_reason(const OrderRules& rules, Stage stage) {
    for (const OrderRule& rule : rules.rules) {
        if (rule.before.stage && rule.after.stage == stage) return rule.because;
    }
    return "";
}

void note_stages(const OrderRules& rules, WorkPlan& plan) {
    std::set<Stage> seen;
    for (const Operation& operation : plan.operations) {
        if (!seen.insert(operation.stage).second) continue;
        plan.stages.push_back(
            {operation.stage, plan.stages.empty() ? "" : stage_reason(rules, operation.stage)});
    }
}

// As they are come to; each can name what was made before it.
void number_glue_ups(const Piece& piece, WorkPlan& plan) {
    std::vector<GlueUp> sorted;
    sorted.reserve(plan.glue_ups.size());
    std::vector<GluedBefore> before;
    for (Operation& operation : plan.done) {
        if (!operation.glue_up) continue;
        before.insert(before.begin(), {&plan.glue_ups[*operation.glue_up], {}});
        operation.glue_up.reset();  // it is no longer one of the plan's
    }
    for (std::size_t i = 0; i < plan.operations.size(); ++i) {
        Operation& operation = plan.operations[i];
        if (!operation.glue_up) continue;
        sorted.push_back(std::move(plan.glue_ups[*operation.glue_up]));
        operation.glue_up = sorted.size() - 1;
        std::vector<Phrase> text = glue_up_text(piece, sorted.back(), before, plan.glue);
        operation.text.insert(operation.text.begin(), text.begin(), text.end());
        before.insert(before.begin(),
                      {&sorted.back(), i + 1});  // the latest first: it holds those that it joined
    }
    plan.glue_ups = std::move(sorted);
}

// Operations in the order of the timetable; what points at items points at them then.
void put_in_order(const Piece& piece, std::vector<WorkItem>& items, const Timetable& timetable,
                  const std::vector<OrderEdge>& edges, WorkPlan& plan) {
    std::vector<std::size_t> position(items.size());
    for (std::size_t i = 0; i < timetable.entries.size(); ++i) position[timetable.entries[i].job] = i;
    std::vector<std::vector<WorkReason>> reasons = reasons_of(items, edges, position);
    for (const schedule::Entry& entry : timetable.entries) {
        Operation& operation = items[entry.job].operation;
        operation.after = std::move(reasons[entry.job]);
        operation.time = {entry.worker, entry.begin, entry.end, entry.sets_up};
        plan.operations.push_back(std::move(operation));
    }
    number_glue_ups(piece, plan);
    for (SetUp& set_up : plan.set_ups) {
        for (std::size_t& operation : set_up.operations) operation = position[operation];
        std::ranges::sort(set_up.operations);
    }
    // Set-ups are numbered as they are come to.
    std::vector<std::size_t> order(plan.set_ups.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::ranges::sort(order, {}, [&](std::size_t i) { return plan.set_ups[i].operations.front(); });
    std::vector<SetUp> sorted;
    for (const std::size_t i : order) {
        for (const std::size_t operation : plan.set_ups[i].operations)
            plan.operations[operation].set_up = sorted.size();
        sorted.push_back(std::move(plan.set_ups[i]));
    }
    plan.set_ups = std::move(sorted);
}

Diagnostic no_such_glue(const Piece& piece, const Curing& curing) {
    std::vector<std::string> names;
    for (const auto& [name, glue] : curing.glues) names.push_back(name);
    const std::string near = nearest_name(piece.glue, names);
    return diagnose(Code::unknown_name, piece.glue_where, fmt::format("there is no glue `{}`", piece.glue))
        .hint(near.empty() ? "the glues are " + all_of(names) : fmt::format("did you mean `{}`?", near));
}

GlueFacts facts_of(const Glue& glue) {
    return {glue.name, static_cast<Seconds>(glue.open.get_d()), static_cast<Seconds>(glue.clamp.get_d()),
            static_cast<Seconds>(glue.cure.get_d())};
}

}  // namespace

std::optional<WorkPlan> plan_work(const Piece& piece, const WorkData& usual,
                                  const std::optional<AssemblyFacts>& assembly, const WorkOptions& options,
                                  Diagnostics& diagnostics) {
    WorkData data = usual;
    if (!piece.glue.empty()) {
        const std::optional<Curing> curing = usual.curing.with_glue(piece.glue);
        if (!curing) {
            diagnostics.add(no_such_glue(piece, usual.curing));
            return std::nullopt;
        }
        data.curing = *curing;
    }
    WorkPlan plan;
    plan.title = piece.name;
    plan.shop = data.shop;
    plan.caution = data.operations.caution;
    plan.glue = facts_of(data.curing.glue);
    plan.glue_ups = glue_ups_of(piece, assembly, data.curing);
    DoneWork work = set_aside_done(piece, collect_work(piece, data, plan.glue_ups, diagnostics), diagnostics);
    plan.done = std::move(work.done);
    std::vector<WorkItem>& items = work.left;
    check_glue_ups(piece, left_to_glue(plan.glue_ups, items), data, diagnostics);
    plan.numbers = numbers_of(piece, items);
    std::vector<OrderEdge> edges = work_order(items, data.order, options.in_stages);
    add_clamp_order(items, plan.glue_ups, data.shop, edges);
    if (std::optional<Diagnostic> circle = circle_in(items, edges)) {
        diagnostics.add(std::move(*circle));
        return std::nullopt;
    }
    set_waits(items, edges);
    plan.set_ups = find_set_ups(items, piece.style);
    const std::optional<Timetable> timetable =
        schedule::make_timetable(problem_of(items, plan.set_ups, edges, options), effort);
    if (!timetable) return std::nullopt;  // no circle is left
    plan.sums = sums_of(*timetable, items, options);
    put_in_order(piece, items, *timetable, edges, plan);
    add_notes(piece, data.order.notes, plan.operations);
    note_stages(data.order, plan);
    return plan;
}

}  // namespace rodwright
