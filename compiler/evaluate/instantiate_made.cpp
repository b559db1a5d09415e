// What has come out of the shop so far: measured sizes, steps that are done, sizes to be taken from the work.
#include <fmt/format.h>

#include <algorithm>

#include "compiler/evaluate/instantiation.hpp"
#include "compiler/evaluate/own_sizes.hpp"
#include "compiler/evaluate/words.hpp"

namespace rodwright {

namespace {

bool all_copies(const PartPattern& pattern) {
    return !pattern.row && pattern.hands == no_hands;
}

}  // namespace

void Instantiation::made(const Pending& pending, const Syntax& line) {
    const auto pattern = pending.references->pattern(line.child(0), *pending.container->scope, evaluator_);
    if (!pattern || !spend_on_copies(*pattern)) return;
    MadeStatement made{*pattern, {}, {}, line.child(0).span()};
    for (const Syntax& size : line.child(1).children()) measured(pending, size, made);
    out_.made.push_back(std::move(made));
}

void Instantiation::measured(const Pending& pending, const Syntax& line, MadeStatement& made) {
    if (line.kind() == NodeKind::broken) return;
    const bool equation = line.kind() == NodeKind::equation && line.child(0).kind() == NodeKind::name;
    const std::optional<Axis> axis = equation ? axis_from(line.child(0).text()) : std::nullopt;
    if (!axis) {
        refuse(line, "in `made`, which holds sizes that were measured, as `wide = 1-47/64\"`");
        return;
    }
    const std::optional<Rational> length = evaluator_.length(line.child(1), *pending.container->scope);
    if (!length) return;
    const auto place = static_cast<std::size_t>(*axis);
    if (*length <= 0) {
        report(diagnose(Code::bad_argument, line.child(1).span(), "no part measures nothing, or less"));
    } else if (made.size[place]) {
        report(diagnose(Code::defined_twice, line.span(), "this size is measured twice")
                   .label(made.where_size[place], "here first"));
    } else {
        made.size[place] = *length;
        made.where_size[place] = line.span();
    }
}

// Every line about a part is kept for each of its copies.
bool Instantiation::spend_on_copies(const PartPattern& pattern) {
    return evaluator_.spend(out_.declarations[pattern.declaration].instances.size(), pattern.where);
}

// What the design says of a size by itself gives way to what was measured, and all that hangs on it follows.
// A size that follows from where other parts are stays: whether the part still fits there is for the checks.
void Instantiation::lay_over() {
    if (out_.made.empty()) return;
    OwnSizes sizes(out_);
    for (MadeStatement& made : out_.made) {
        if (!all_copies(made.part)) continue;
        for (const Axis axis : all_axes) {
            const auto place = static_cast<std::size_t>(axis);
            if (!made.size[place]) continue;
            for (const std::size_t instance : out_.declarations[made.part.declaration].instances) {
                if (out_.instances[instance].master == instance)
                    sizes.replace(instance, axis, *made.size[place], made.where_size[place]);
            }
        }
    }
}

void Instantiation::done(const Pending& pending, const Syntax& line) {
    DoneStatement statement;
    const Syntax upon = line.find(NodeKind::upon);
    if (upon) {
        statement.on = members(pending, upon.child(0));
        if (statement.on.empty()) return;
    }
    for (const Syntax& step : line.all(NodeKind::word)) {
        if (!std::ranges::all_of(statement.on, [&](const auto& each) { return spend_on_copies(each); }))
            return;
        const std::string_view name = step.text();
        const std::size_t dot = name.find('.');
        const bool of_work = dot != std::string_view::npos;
        statement.work = name.substr(0, of_work ? dot : 0);
        statement.step = of_work ? name.substr(dot + 1) : name;
        statement.where = step.span();
        out_.done.push_back(statement);
    }
}

void Instantiation::take(PartDeclaration& declaration, const Syntax& line, Scope& scope) {
    const Syntax over = line.find(NodeKind::over);
    const std::optional<Rational> more = over ? evaluator_.length(over.child(0), scope) : std::nullopt;
    if (more && *more <= 0) {
        report(diagnose(Code::bad_argument, over.span(), "nothing is left over to cut to the mark")
                   .hint("as in `take wide from the work over 1/2\"`"));
        return;
    }
    for (const Syntax& child : line.children()) {
        const std::optional<Axis> axis =
            child.kind() == NodeKind::word ? axis_from(child.text()) : std::nullopt;
        if (axis) declaration.taken.push_back({*axis, more, child.span()});
    }
}

}  // namespace rodwright
