#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "compiler/place/report.hpp"

namespace rodwright {

namespace {

// Who an unknown belongs to.
struct Owner {
    enum class Kind : std::uint8_t { container, instance, gap, ends };
    Kind kind{};
    std::size_t index = 0;
    Face face{};
};

std::vector<Owner> owners(const Statements& statements) {
    std::vector<Owner> result(statements.unknowns);
    const auto own = [&](Unknown first, Owner::Kind kind, std::size_t index) {
        for (const Face face : all_faces) {
            result[static_cast<std::size_t>(first) + static_cast<std::size_t>(face)] = {kind, index, face};
        }
    };
    for (std::size_t i = 0; i < statements.containers.size(); ++i) {
        own(statements.containers[i].first, Owner::Kind::container, i);
    }
    for (std::size_t i = 0; i < statements.instances.size(); ++i) {
        if (statements.instances[i].master == i) own(statements.instances[i].first, Owner::Kind::instance, i);
    }
    for (std::size_t i = 0; i < statements.rows.size(); ++i) {
        result[static_cast<std::size_t>(statements.rows[i].gap)] = {Owner::Kind::gap, i, {}};
        result[static_cast<std::size_t>(statements.rows[i].ends)] = {Owner::Kind::ends, i, {}};
    }
    return result;
}

// Something with faces that the maker wrote, for one axis.
struct Subject {
    std::string name;
    Span where;
    Span body;  // its lines
    Axis axis{};
    bool near_free = false;
    bool far_free = false;
    std::size_t near_group = 0;
    std::size_t far_group = 0;
};

using Key = std::pair<std::size_t, std::size_t>;  // container or declaration (+ offset), axis

using Reports = std::map<std::size_t, Diagnostic>;  // by what they are about

// What is wrong along several axes is one error, which says so for each of them.
void merge_report(Reports& reports, std::size_t thing, const Diagnostic& diagnostic) {
    const auto [found, first] = reports.try_emplace(thing, diagnostic);
    if (!first) found->second.notes.push_back(diagnostic.message + "; " + diagnostic.help);
}

class FreeReport {
  public:
    FreeReport(const Statements& statements, const LinearSolution& solution, Diagnostics& diagnostics)
        : statements_(statements), diagnostics_(diagnostics), owners_(owners(statements)) {
        for (std::size_t group = 0; group < solution.free_groups.size(); ++group) {
            for (const Unknown unknown : solution.free_groups[group]) add(unknown, group);
        }
    }

    void report() {
        for (const auto& [key, subject] : subjects_) {
            const bool near_error = subject.near_free && group_has_error(subject.near_group);
            const bool far_error = subject.far_free && group_has_error(subject.far_group);
            if (!near_error && !far_error && !in_row_.contains(key)) report_subject(key, subject);
        }
        for (const auto& [thing, diagnostic] : reports_) diagnostics_.add(diagnostic);
        for (const std::size_t row : rows_) report_row(statements_.rows[row]);
    }

  private:
    const Statements& statements_;
    Diagnostics& diagnostics_;
    std::vector<Owner> owners_;
    std::map<Key, Subject> subjects_;
    std::map<std::size_t, std::set<Key>> groups_;
    std::set<std::size_t> rows_;
    std::set<Key> in_row_;  // their parts, along the row: a line in the part is not what is missing
    std::set<std::size_t> reported_groups_;
    Reports reports_;  // by container or declaration (+ offset)

    void add(Unknown unknown, std::size_t group) {
        const Owner& owner = owners_[static_cast<std::size_t>(unknown)];
        if (owner.kind == Owner::Kind::gap || owner.kind == Owner::Kind::ends) {
            const Row& row = statements_.rows[owner.index];
            const bool uncounted = statements_.declarations[row.declaration].fit && row.wanted_gap;
            if (uncounted && owner.kind == Owner::Kind::gap) return;
            rows_.insert(owner.index);
            in_row_.emplace(statements_.containers.size() + row.declaration,
                            static_cast<std::size_t>(row.axis));
            return;
        }
        const bool container = owner.kind == Owner::Kind::container;
        // The near faces of the piece are where everything is measured from.
        if (container && owner.index == 0 && !is_far(owner.face)) return;
        const std::size_t thing =
            container ? owner.index
                      : statements_.containers.size() + statements_.instances[owner.index].declaration;
        const Key key{thing, static_cast<std::size_t>(axis_of(owner.face))};
        Subject& subject = subjects_.try_emplace(key, describe(owner)).first->second;
        (is_far(owner.face) ? subject.far_free : subject.near_free) = true;
        (is_far(owner.face) ? subject.far_group : subject.near_group) = group;
        groups_[group].insert(key);
    }

    Subject describe(const Owner& owner) const {
        Subject subject;
        subject.axis = axis_of(owner.face);
        if (owner.kind == Owner::Kind::container) {
            const Container& container = statements_.containers[owner.index];
            subject.name = owner.index == 0 ? "the piece" : fmt::format("`{}`", container.name);
            subject.where = container.where;
            subject.body = container.body;
        } else {
            const PartDeclaration& part =
                statements_.declarations[statements_.instances[owner.index].declaration];
            subject.name = fmt::format("`{}`", part.name);
            subject.where = part.where;
            subject.body = part.syntax.span();
        }
        return subject;
    }

    // A line that has no value was reported; what it would have placed is not missing a line.
    bool has_error(Span body) const {
        return std::any_of(statements_.failed_lines.begin(), statements_.failed_lines.end(), [&](Span line) {
            return line.file == body.file && line.begin >= body.begin && line.end <= body.end;
        });
    }

    bool group_has_error(std::size_t group) const {
        const auto found = groups_.find(group);
        return std::any_of(found->second.begin(), found->second.end(),
                           [&](const Key& key) { return has_error(subjects_.at(key).body); });
    }

    void report_subject(const Key& key, const Subject& subject) {
        const auto near = face_name(face_of(subject.axis, false));
        const auto far = face_name(face_of(subject.axis, true));
        const auto size = axis_name(subject.axis);
        const std::size_t group = subject.near_free ? subject.near_group : subject.far_group;
        if (groups_[group].size() > 1) {
            report_group(group, key);
            return;
        }
        Diagnostic diagnostic = diagnose(Code::no_place, subject.where, "");
        if (subject.near_free && subject.far_free && subject.near_group == subject.far_group) {
            diagnostic.message =
                fmt::format("{} has no place along `{}`: nothing says where it is", subject.name, size);
            diagnostic.help = fmt::format("write `{} = ...` or `{} = ...`", near, far);
        } else if (subject.near_free && subject.far_free) {
            diagnostic.message =
                fmt::format("{} has neither a place nor a size along `{}`", subject.name, size);
            diagnostic.help = fmt::format("write two of `{} = ...`, `{} = ...`, `{} = ...`", near, far, size);
        } else {
            const auto missing = subject.near_free ? near : far;
            const auto known = subject.near_free ? far : near;
            diagnostic.message =
                fmt::format("the `{}` of {} has no place: its `{}` is fixed, its size is not", missing,
                            subject.name, known);
            diagnostic.help = fmt::format("write `{} = ...` or `{} = ...`", missing, size);
        }
        merge_report(reports_, key.first, diagnostic);
    }

    // Several parts that hang on one another and on nothing that is fixed.
    void report_group(std::size_t group, const Key& first_key) {
        if (!reported_groups_.insert(group).second) return;
        const Subject& first = subjects_.at(first_key);
        const auto axis = axis_name(first.axis);
        Diagnostic diagnostic =
            diagnose(Code::no_place, first.where,
                     fmt::format("{} has no place along `{}`: it is tied only to parts that have none",
                                 first.name, axis));
        constexpr std::size_t most_labels = 5;
        for (const Key& key : groups_[group]) {
            const Subject& other = subjects_.at(key);
            if (other.where == first.where || diagnostic.labels.size() >= most_labels) continue;
            diagnostic.labels.push_back({other.where, fmt::format("{} is tied to it", other.name)});
        }
        diagnostic.help =
            fmt::format("fix one of them, as in `{} = piece.{} + ...`", face_name(face_of(first.axis, false)),
                        face_name(face_of(first.axis, false)));
        merge_report(reports_, first_key.first, diagnostic);
    }

    void report_row(const Row& row) {
        if (has_error(row.syntax.span())) return;
        const PartDeclaration& part = statements_.declarations[row.declaration];
        diagnostics_.add(
            diagnose(Code::row_unknowns, row.syntax.span(),
                     fmt::format("the row of `{}` has more than one unknown", part.name))
                .label(part.where, "the row")
                .note("of count, gap, ends and the parts' size, exactly one may be unknown")
                .hint("give `ends = ...` or `gap = ...` in the row, or the parts' size along it"));
    }
};

Diagnostic size_diagnostic(const Statements& statements, const Instance& instance, Axis axis,
                           const Rational& size) {
    return diagnose(Code::no_size, statements.declarations[instance.declaration].where,
                    fmt::format("`{}` would be {} along `{}`", instance.name,
                                format_small(size, statements.style), axis_name(axis)))
        .hint(fmt::format("its `{}` must lie beyond its `{}`", face_name(face_of(axis, true)),
                          face_name(face_of(axis, false))));
}

}  // namespace

void report_free(const Statements& statements, const LinearSolution& solution, Diagnostics& diagnostics) {
    FreeReport(statements, solution, diagnostics).report();
}

void report_sizes(const Statements& statements, const Places& places, Diagnostics& diagnostics) {
    std::set<std::pair<std::size_t, Axis>> reported;
    Reports by_declaration;
    for (std::size_t i = 0; i < statements.instances.size(); ++i) {
        const Instance& instance = statements.instances[i];
        if (!places.instance_known[i] || instance.master != i) continue;
        for (const Axis axis : all_axes) {
            const Rational size = places.instances[i].size(axis);
            if (size > 0 || !reported.emplace(instance.declaration, axis).second) continue;
            merge_report(by_declaration, instance.declaration,
                         size_diagnostic(statements, instance, axis, size));
        }
    }
    for (const auto& [declaration, diagnostic] : by_declaration) diagnostics.add(diagnostic);
}

}  // namespace rodwright
