#include <fmt/format.h>

#include "compiler/evaluate/instantiation.hpp"
#include "compiler/evaluate/words.hpp"

namespace rodwright {

void Instantiation::evaluate(const Pending& pending) {
    for (const Syntax& statement : pending.statements) evaluate_one(pending, statement);
}

void Instantiation::evaluate_one(const Pending& pending, const Syntax& statement) {
    Scope& scope = *pending.container->scope;
    switch (statement.kind()) {
        case NodeKind::unit:
        case NodeKind::wood:
        case NodeKind::assembly:
        case NodeKind::variant:
            break;
        case NodeKind::part: {
            const auto found = pending.container->parts.find(statement.child(0).text());
            const PartDeclaration& declaration = out_.declarations[found->second];
            if (declaration.syntax.node != statement.node) break;  // a second part of that name: reported
            for (const std::size_t instance : declaration.instances) {
                if (out_.instances[instance].master == instance) part_body(instance);
            }
            break;
        }
        case NodeKind::place: {
            const auto found = pending.container->assemblies.find(statement.child(1).text());
            const Syntax block = statement.find(NodeKind::block);
            if (found == pending.container->assemblies.end() || !block) break;
            Scope& inside = new_scope(&scope, new_references({out_, *pending.container, *found->second}));
            for (const Syntax& line : active(block.children(), inside)) {
                if (line.kind() == NodeKind::equation) {
                    equation(line, inside);
                } else {
                    refuse(line, "where an assembly is placed: only lines that say where its faces are");
                }
            }
            break;
        }
        case NodeKind::equation:
            equation(statement, scope);
            break;
        case NodeKind::space:
            space(pending, statement);
            break;
        case NodeKind::join:
        case NodeKind::fasten:
            join(pending, statement);
            break;
        case NodeKind::load:
            load(pending, statement);
            break;
        case NodeKind::used_as:
            use(pending, statement);
            break;
        case NodeKind::require:
            out_.requirements.emplace_back(statement, &scope);
            break;
        case NodeKind::match:
            match(pending, statement);
            break;
        case NodeKind::finish:
            finish(statement, scope);
            break;
        case NodeKind::glue:
            glue(statement);
            break;
        case NodeKind::made:
            made(pending, statement);
            break;
        case NodeKind::done:
            done(pending, statement);
            break;
        case NodeKind::accept:
            accept(pending, statement);
            break;
        case NodeKind::opens:
            opens(pending, statement);
            break;
        case NodeKind::climate:
            climate(statement, scope);
            break;
        default:
            refuse(statement, "here, in the body of a piece");
            break;
    }
}

void Instantiation::equation(const Syntax& line, Scope& scope) {
    const std::optional<Linear> left = evaluator_.linear_length(line.child(0), scope);
    const std::optional<Linear> right = evaluator_.linear_length(line.child(1), scope);
    if (!left || !right) {
        out_.failed_lines.push_back(line.span());
        return;
    }
    if (left->terms.empty() && right->terms.empty() && line.child(0).kind() == NodeKind::name &&
        scope.find(line.child(0).text()) != nullptr) {
        report(
            diagnose(Code::wrong_statement, line.span(),
                     fmt::format("`{}` already has a value, and no face or size is placed by this line",
                                 line.child(0).text()))
                .hint(
                    "a line of a piece relates faces and sizes; `let` names a value, `require` checks one"));
        return;
    }
    out_.equations.push_back({*left - *right, line.span()});
}

void Instantiation::part_body(std::size_t index) {
    const PartDeclaration& declaration = out_.declarations[out_.instances[index].declaration];
    const Syntax body = declaration.syntax.find(NodeKind::block);
    if (!evaluator_.spend(body.node_count(), declaration.where)) return;
    PartReferences* references = new_references({out_, *declaration.container, index});
    Scope& scope = new_scope(declaration.container->scope, references);
    out_.instances[index].scope = &scope;
    for (const Syntax& statement : active(body.children(), scope)) {
        body_statement(index, statement, scope);
    }
}

void Instantiation::body_statement(std::size_t index, const Syntax& statement, Scope& scope) {
    PartDeclaration& declaration = out_.declarations[out_.instances[index].declaration];
    switch (statement.kind()) {
        case NodeKind::equation:
            equation(statement, scope);
            break;
        case NodeKind::grain:
            declaration.grain = axis_from(statement.child(0).text());
            break;
        case NodeKind::thick:
            declaration.thick = axis_from(statement.child(0).text());
            break;
        case NodeKind::apply:
            out_.shapes.push_back({statement, index, &scope});
            break;
        case NodeKind::require:
            out_.requirements.emplace_back(statement, &scope);
            break;
        case NodeKind::glued:
            glued(declaration, statement, scope);
            break;
        case NodeKind::show:
            show(declaration, statement.child(0));
            break;
        case NodeKind::rake:
        case NodeKind::splay:
            not_yet(statement, "inclined parts (`rake`, `splay`) are");
            break;
        case NodeKind::take:
            take(declaration, statement, scope);
            break;
        default:
            refuse(statement, "in the body of a part");
            break;
    }
}

void Instantiation::space(const Pending& pending, const Syntax& line) {
    const Syntax name = line.child(0);
    const auto found = pending.container->parts.find(name.text());
    if (found == pending.container->parts.end()) {
        report(diagnose(Code::unknown_name, name.span(), fmt::format("there is no part `{}`", name.text())));
        return;
    }
    const PartDeclaration& declaration = out_.declarations[found->second];
    const std::optional<Axis> axis = axis_from(line.child(1).text());
    if (!declaration.row || !axis) {
        report(diagnose(Code::wrong_statement, name.span(), fmt::format("`{}` is not a row", name.text()))
                   .label(declaration.where, "declared here, without a count")
                   .hint(fmt::format("write `part {}[9] ...`, or `part {}[fit] ...` for as many as fit",
                                     name.text(), name.text())));
        return;
    }
    if (declaration.instances.empty()) return;  // too many parts: reported
    Scope& outer = *pending.container->scope;
    Row row;
    row.syntax = line;
    row.declaration = found->second;
    row.axis = *axis;
    row.gap = new_unknowns(2);
    row.ends = Unknown{static_cast<std::uint32_t>(row.gap) + 1};
    Scope& scope = new_scope(&outer, nullptr);
    row.scope = &scope;
    const auto unknown_name = [&](std::string_view word, Unknown unknown) {
        scope.define(word,
                     {name, &scope, name.span(), false, Definition::State::done, Linear{0, {{unknown, 1}}}});
    };
    unknown_name("gap", row.gap);
    unknown_name("ends", row.ends);
    const bool counted = !declaration.fit || counts_.contains(row_key(declaration));
    if (const Syntax block = line.find(NodeKind::block)) {
        for (const Syntax& statement : block.children()) {
            if (statement.kind() == NodeKind::broken) continue;
            if (statement.kind() != NodeKind::equation) {
                refuse(statement, "in a row: only `gap = ...` and `ends = ...`");
                continue;
            }
            // The gap that a fitted row asks for decides the count; the exact gap then follows from it.
            const bool wanted = declaration.fit && statement.child(0).text() == "gap";
            row.wanted_gap = row.wanted_gap || wanted;
            if (!counted) {
                note_failure(statement, scope);
            } else if (!wanted) {
                equation(statement, scope);
            }
        }
    }
    const std::optional<Linear> from = evaluator_.linear_length(line.child(2), outer);
    const std::optional<Linear> to = evaluator_.linear_length(line.child(3), outer);
    if (!from || !to) out_.failed_lines.push_back(line.span());
    if (from && to && counted) row_equations(row, *from, *to);
    // Its size is found when it has a place; the row is laid out when it is counted.
    if (from && !counted) {
        const Linear near = out_.face(declaration.instances.front(), face_of(row.axis, false));
        out_.equations.push_back({near - *from, line.span()});
    }
    out_.rows.push_back(row);
}

// A row that is not laid out does not lack what its line failed to say.
void Instantiation::note_failure(const Syntax& line, Scope& scope) {
    if (!evaluator_.linear_length(line.child(1), scope)) out_.failed_lines.push_back(line.span());
}

// from -> ends -> part -> gap -> part ... -> ends -> to, and every part as large as the first.
void Instantiation::row_equations(const Row& row, const Linear& from, const Linear& to) {
    const PartDeclaration& declaration = out_.declarations[row.declaration];
    constexpr std::size_t nodes_of_part = 20;  // what a maker would write to place one part of the row
    if (!evaluator_.spend(nodes_of_part * declaration.instances.size(), row.syntax.span())) return;
    const Face near = face_of(row.axis, false);
    const Face far = face_of(row.axis, true);
    const Span where = row.syntax.span();
    const Linear gap{0, {{row.gap, 1}}};
    const Linear ends{0, {{row.ends, 1}}};
    const std::size_t copies = declaration.copies();
    std::optional<std::size_t> earlier;
    for (std::size_t place = 0; place < declaration.instances.size(); place += copies) {
        const std::size_t part = declaration.instances[place];
        const Linear start = out_.face(part, near);
        if (!earlier) {
            out_.equations.push_back({start - from - ends, where});
        } else {
            out_.equations.push_back({start - out_.face(*earlier, far) - gap, where});
            const Linear size = out_.face(part, far) - start;
            const Linear first_size = out_.face(declaration.instances.front(), far) -
                                      out_.face(declaration.instances.front(), near);
            out_.equations.push_back({size - first_size, where});
        }
        earlier = part;
    }
    if (earlier) out_.equations.push_back({to - out_.face(*earlier, far) - ends, where});
}

std::vector<PartPattern> Instantiation::members(const Pending& pending, const Syntax& side) {
    std::vector<PartPattern> result;
    for (const Syntax& reference : side.children()) {
        if (auto pattern = pending.references->pattern(reference, *pending.container->scope, evaluator_)) {
            result.push_back(*pattern);
        }
    }
    return result;
}

void Instantiation::join(const Pending& pending, const Syntax& line) {
    JoinStatement statement;
    statement.syntax = line;
    statement.fastening = line.kind() == NodeKind::fasten;
    const std::vector<Syntax> sides = line.all(NodeKind::of_member);
    statement.first = members(pending, sides[0]);
    statement.second = members(pending, sides[1]);
    statement.call = line.find(NodeKind::call);
    statement.scope = pending.container->scope;
    if (!statement.first.empty() && !statement.second.empty()) out_.joins.push_back(std::move(statement));
}

void Instantiation::load(const Pending& pending, const Syntax& line) {
    const std::optional<Quantity> force = evaluator_.quantity(line.child(0), *pending.container->scope);
    auto pattern = pending.references->pattern(line.child(1), *pending.container->scope, evaluator_);
    if (!force || !pattern) return;
    const bool weight = force->dimension == Dimension::of(Base::force);
    if (!weight || !pattern->face) {
        report(diagnose(
            Code::bad_argument, line.child(weight ? 1 : 0).span(),
            weight ? "a load is put on a face, as in `seat.top`" : "a load is a force, as in `150 lbf`"));
        return;
    }
    const Syntax place = line.child(2);
    out_.loads.push_back({*force, *pattern, place ? std::string(place.text()) : "middle", line.span()});
}

void Instantiation::use(const Pending& pending, const Syntax& line) {
    constexpr long most_people = 100;
    UseStatement statement;
    statement.where = line.span();
    for (const Syntax& child : line.children()) {
        if (child.kind() == NodeKind::people) {
            const auto people =
                evaluator_.whole_number(child.child(0), *pending.container->scope, 1, most_people);
            if (!people) return;
            statement.people = *people;
        } else if (child.kind() == NodeKind::upon) {
            statement.on = members(pending, child.child(0));
            if (statement.on.empty()) return;
        } else {
            (statement.what.empty() ? statement.what : statement.detail) = child.text();
        }
    }
    out_.uses.push_back(std::move(statement));
}

void Instantiation::match(const Pending& pending, const Syntax& line) {
    MatchStatement statement{members(pending, line.child(0)), line.child(1).kind(), line.span()};
    if (!statement.parts.empty()) out_.matches.push_back(std::move(statement));
}

void Instantiation::show(PartDeclaration& declaration, const Syntax& word) {
    if (const std::optional<Face> face = face_from(word.text())) {
        declaration.shown.emplace_back(*face, word.span());
    } else {
        report(diagnose(Code::bad_selector, word.span(), fmt::format("`{}` is no face", word.text()))
                   .hint("write `left`, `right`, `front`, `back`, `bottom` or `top`"));
    }
}

void Instantiation::glued(PartDeclaration& declaration, const Syntax& line, Scope& scope) {
    constexpr long most_boards = 100;
    GluedUp glued;
    for (const Syntax& child : line.children()) {
        if (child.kind() == NodeKind::each) {
            glued.narrowest = evaluator_.length(child.child(0), scope);
            glued.widest = evaluator_.length(child.child(1), scope);
            if (glued.narrowest && glued.widest &&
                (*glued.narrowest <= 0 || *glued.widest < *glued.narrowest)) {
                report(diagnose(Code::bad_argument, child.span(),
                                "the narrowest board comes first, and both have some width")
                           .hint("as in `glued from boards each 3\" to 5\"`"));
            }
        } else if (child.kind() != NodeKind::word) {
            glued.count = evaluator_.whole_number(child, scope, 1, most_boards);
        } else if (child.text() == "alternating") {
            glued.alternating = true;
        }
    }
    declaration.glued = std::move(glued);
}

void Instantiation::glue(const Syntax& line) {
    if (line.child(1)) {
        report(diagnose(Code::bad_argument, line.child(1).span(), "a piece is glued with one glue")
                   .hint("as in `glue liquid_hide`"));
    } else if (out_.glue) {
        report(diagnose(Code::defined_twice, line.span(), "the glue is said twice")
                   .label(out_.glue.span(), "here first"));
    } else {
        out_.glue = line.child(0);
    }
}

void Instantiation::finish(const Syntax& line, Scope& scope) {
    const Syntax coats = line.child(1);
    constexpr long most_coats = 50;
    const std::optional<long> count = coats ? evaluator_.whole_number(coats, scope, 1, most_coats) : 1;
    if (count) out_.finishes.emplace_back(std::string(line.child(0).text()), *count);
}

}  // namespace rodwright
