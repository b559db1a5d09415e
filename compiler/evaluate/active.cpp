#include "compiler/evaluate/active.hpp"

#include <fmt/format.h>

#include <set>

#include "compiler/limits.hpp"

namespace rodwright {

namespace {

// Looks in a condition of a design for a face or size, also by way of the lets that it names. None of them
// has a value yet: conditions are decided before anything is placed, because they decide what there is to
// place.
class PlacedValues {
  public:
    PlacedValues(Scope& scope, Evaluator& evaluator) : evaluator_(evaluator) { scopes_.push_back(&scope); }

    // The node that stands for one; empty if there is none.
    Syntax find(const Syntax& expression) {
        if (expression.kind() == NodeKind::member) return expression;
        if (depth_ >= limits::tree_depth) return {};  // evaluating it will say so
        ++depth_;
        const Syntax found =
            expression.kind() == NodeKind::name ? find_name(expression) : find_below(expression);
        --depth_;
        return found;
    }

  private:
    Evaluator& evaluator_;
    std::vector<Scope*> scopes_;  // the innermost let's last
    std::set<const Definition*> seen_;
    std::size_t depth_ = 0;

    Syntax find_below(const Syntax& expression) {
        for (const Syntax& child : expression.children()) {
            if (const Syntax found = find(child)) return found;
        }
        return {};
    }

    Syntax find_name(const Syntax& name) {
        Scope& scope = *scopes_.back();
        References* references = scope.references();
        const auto own =
            references == nullptr ? std::nullopt : references->own(name.text(), name, evaluator_);
        if (own) return std::holds_alternative<Linear>(*own) ? name : Syntax{};
        const Definition* definition = scope.find(name.text());
        if (definition == nullptr || definition->state != Definition::State::waiting) return {};
        if (!seen_.insert(definition).second) return {};
        scopes_.push_back(definition->scope);
        const Syntax found = find(definition->expression);
        scopes_.pop_back();
        return found;
    }
};

void report_placed(const Syntax& placed, const Syntax& condition, Evaluator& evaluator) {
    const auto begin = static_cast<std::size_t>(condition.node);
    const auto node = static_cast<std::size_t>(placed.node);
    const bool inside = placed.tree == condition.tree && node - begin < condition.node_count();
    Diagnostic diagnostic = diagnose(
        Code::wrong_kind_of_value, inside ? placed.span() : condition.span(),
        fmt::format("a condition cannot use `{}`: conditions are decided before the parts have their places",
                    placed.text()));
    if (!inside) diagnostic.labels.push_back({placed.span(), "by way of this"});
    diagnostic.help =
        "use params and lets that are made of numbers: `let thickness = 1\"`, `if thickness > 3/4\"`, "
        "and `tall = thickness` in the part";
    evaluator.report(std::move(diagnostic));
}

std::optional<bool> decided(const Syntax& condition, Scope& scope, Evaluator& evaluator, bool in_design) {
    const Syntax placed = in_design ? PlacedValues(scope, evaluator).find(condition) : Syntax{};
    if (!placed) return evaluator.condition(condition, scope);
    report_placed(placed, condition, evaluator);
    return std::nullopt;
}

}  // namespace

bool defines_name(const Syntax& statement, bool equations_define) {
    if (statement.kind() == NodeKind::param || statement.kind() == NodeKind::let) return true;
    return equations_define && statement.kind() == NodeKind::equation &&
           statement.child(0).kind() == NodeKind::name;
}

bool define_name(const Syntax& statement, Scope& scope, Evaluator& evaluator, bool equations_define) {
    if (!defines_name(statement, equations_define)) return false;
    const Syntax name = statement.child(0);
    const bool parameter = statement.kind() != NodeKind::let;
    const Definition* earlier =
        scope.define(name.text(), {statement.child(1), &scope, name.span(), parameter, {}, {}});
    if (earlier != nullptr) {
        evaluator.report(
            diagnose(Code::defined_twice, name.span(), fmt::format("`{}` is defined twice", name.text()))
                .label(earlier->name_span, "first defined here"));
    }
    return true;
}

std::vector<Syntax> active_statements(const std::vector<Syntax>& statements, Scope& scope,
                                      Evaluator& evaluator, bool equations_define) {
    std::vector<Syntax> rest;
    for (const Syntax& statement : statements) {
        if (!define_name(statement, scope, evaluator, equations_define)) rest.push_back(statement);
    }
    std::vector<Syntax> result;
    for (const Syntax& statement : rest) {
        if (statement.kind() == NodeKind::broken) continue;
        if (statement.kind() != NodeKind::if_statement) {
            result.push_back(statement);
            continue;
        }
        const std::optional<bool> yes = decided(statement.child(0), scope, evaluator, !equations_define);
        const Syntax chosen = yes ? statement.child(*yes ? 1 : 2) : Syntax{};
        if (!chosen) continue;
        const bool chained = chosen.kind() == NodeKind::if_statement;
        const std::vector<Syntax> inner = chained ? std::vector<Syntax>{chosen} : chosen.children();
        for (const Syntax& active : active_statements(inner, scope, evaluator, equations_define)) {
            result.push_back(active);
        }
    }
    return result;
}

}  // namespace rodwright
