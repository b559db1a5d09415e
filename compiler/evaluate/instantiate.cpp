#include "compiler/evaluate/instantiate.hpp"

#include <fmt/format.h>

#include "compiler/evaluate/active.hpp"
#include "compiler/evaluate/instantiation.hpp"

namespace rodwright {

Scope& Instantiation::new_scope(Scope* parent, References* references) {
    return out_.scopes.emplace_back(parent, references);
}

PartReferences* Instantiation::new_references(PartReferences references) {
    auto owned = std::make_unique<PartReferences>(references);
    PartReferences* result = owned.get();
    out_.references.push_back(std::move(owned));
    return result;
}

Unknown Instantiation::new_unknowns(std::size_t count) {
    const auto first = static_cast<std::uint32_t>(out_.unknowns);
    out_.unknowns += count;
    return Unknown{first};
}

void Instantiation::refuse(const Syntax& statement, std::string_view where) {
    report(diagnose(Code::wrong_statement, statement.span(),
                    fmt::format("`{}` has no meaning {}", kind_word(statement.kind()), where)));
}

void Instantiation::not_yet(const Syntax& statement, std::string_view what) {
    report(diagnose(Code::not_yet, statement.span(), fmt::format("{} not built by this version yet", what)));
}

std::vector<Syntax> Instantiation::active(const std::vector<Syntax>& statements, Scope& scope) {
    return active_statements(statements, scope, evaluator_, false);
}

void Instantiation::override_param(const Syntax& name, const Syntax& expression, Scope& scope,
                                   Scope& values) {
    const Definition* found = scope.find(name.text());
    if (found == nullptr || !found->parameter) {
        std::vector<std::string> params;
        for (const auto& [known, definition] : scope.here()) {
            if (definition.parameter) params.push_back(known);
        }
        Diagnostic diagnostic = diagnose(Code::unknown_name, name.span(),
                                         fmt::format("the piece has no param `{}`", name.text()));
        const std::string near = nearest_name(name.text(), std::move(params));
        if (!near.empty()) diagnostic.help = fmt::format("did you mean `{}`?", near);
        report(std::move(diagnostic));
        return;
    }
    Scope* owner = &scope;
    while (owner->find_here(name.text()) == nullptr) owner = owner->parent();
    owner->replace(name.text(), {expression, &values, found->name_span, true, {}, {}});
}

void Instantiation::apply_variant(const Syntax& piece, const std::string& wanted, Scope& scope) {
    std::vector<std::string> names;
    for (const Syntax& variant : piece.find(NodeKind::block).all(NodeKind::variant)) {
        names.push_back(unquoted(variant.child(0)));
        if (names.back() != wanted) continue;
        for (const Syntax& line : variant.child(1).children()) {
            if (line.kind() == NodeKind::broken) continue;
            if (line.kind() != NodeKind::equation || line.child(0).kind() != NodeKind::name) {
                refuse(line, "in a variant, which gives params other values");
                continue;
            }
            override_param(line.child(0), line.child(1), scope, scope);
        }
        return;
    }
    Diagnostic diagnostic = diagnose(Code::unknown_variant, piece.child(0).span(),
                                     fmt::format("the piece has no variant \"{}\"", wanted));
    const std::string near = nearest_name(wanted, names);
    if (!near.empty()) {
        diagnostic.help = fmt::format("did you mean \"{}\"?", near);
    } else if (names.empty()) {
        diagnostic.help = "it has no variants at all; write `variant \"name\" { length = ... }` in the piece";
    }
    report(std::move(diagnostic));
}

void Instantiation::apply_overrides(const Syntax& piece, const DesignOptions& options, Scope& scope) {
    if (options.variant) apply_variant(piece, *options.variant, scope);
    for (const auto& [name, value] : options.settings) {
        const Tree& tree = design_.add_text("--set " + name, fmt::format("param {} = {}\n", name, value));
        const NodeId param = tree.empty() ? NodeId::none : tree.find(tree.root(), NodeKind::param);
        if (param == NodeId::none) continue;
        const Syntax setting{&tree, param};
        override_param(setting.child(0), setting.child(1), scope, scope);
    }
}

void Instantiation::check_bounds(const Syntax& param, Scope& scope) {
    const Syntax name = param.child(0);
    Definition* definition = scope.find(name.text());
    const std::optional<Value> value = evaluator_.value_of(*definition, name.text(), name.span());
    if (!value) return;
    for (const Syntax& bound : param.children()) {
        const bool low = bound.kind() == NodeKind::from;
        if (!low && bound.kind() != NodeKind::to) continue;
        const std::optional<Quantity> limit = evaluator_.quantity(bound.child(0), scope);
        const auto* quantity = std::get_if<Quantity>(&*value);
        const auto order = limit && quantity != nullptr ? compare(*quantity, *limit) : std::nullopt;
        if (!limit || (order && (low ? *order >= 0 : *order <= 0))) continue;
        const std::string shown =
            quantity == nullptr ? describe(*value) : format_quantity(*quantity, out_.style);
        report(diagnose(Code::out_of_bounds, definition->expression.span(),
                        fmt::format("`{}` is {}, {} {}", name.text(), shown, low ? "below" : "above",
                                    format_quantity(*limit, out_.style)))
                   .label(bound.span(), "the bound is set here"));
    }
}

void Instantiation::run(const DesignOptions& options) {
    const Syntax piece = design_.piece();
    if (!piece) return;
    out_.name = unquoted(piece.child(0));
    Scope& shared = new_scope(nullptr, nullptr);
    for (const Syntax& statement : active(design_.loose(), shared)) {
        if (statement.kind() == NodeKind::wood) {
            declare_wood(statement);
        } else if (statement.kind() == NodeKind::made || statement.kind() == NodeKind::done ||
                   (statement.kind() == NodeKind::equation && statement.child(0).kind() == NodeKind::name)) {
            overlay_.push_back(statement);
        } else {
            refuse(statement, "outside a piece");
        }
    }
    Container& container = out_.containers.emplace_back();
    container.first = new_unknowns(6);
    container.where = piece.child(0).span();
    container.body = piece.span();
    PartReferences* references = new_references({out_, container, container});
    Scope& scope = new_scope(&shared, references);
    container.scope = &scope;
    const std::vector<Syntax> written = piece.find(NodeKind::block).children();
    // Names first, so that overrides are in place before a condition is decided.
    std::vector<Syntax> rest;
    for (const Syntax& statement : written) {
        if (statement.kind() == NodeKind::param)
            out_.params.emplace_back(statement.child(0).text(), statement);
        if (!define_name(statement, scope, evaluator_, false)) rest.push_back(statement);
    }
    for (const Syntax& statement : overlay_) {
        if (statement.kind() == NodeKind::equation)
            override_param(statement.child(0), statement.child(1), scope, scope);
    }
    apply_overrides(piece, options, scope);
    const std::vector<Syntax> statements = active(rest, scope);
    pending_.push_back({&container, statements, references});
    declare(container, statements);
    for (const auto& [name, param] : out_.params) check_bounds(param, scope);
    // Declaring may have added containers; evaluate() adds none.
    for (const Pending& pending : pending_) evaluate(pending);
    for (const Syntax& statement : overlay_) {
        if (statement.kind() != NodeKind::equation) evaluate_one(pending_.front(), statement);
    }
    lay_over();
}

std::unique_ptr<Statements> instantiate(Design& design, Evaluator& evaluator, const DesignOptions& options,
                                        const RowCounts& counts) {
    auto statements = std::make_unique<Statements>();
    Instantiation(design, evaluator, counts, *statements).run(options);
    return statements;
}

}  // namespace rodwright
