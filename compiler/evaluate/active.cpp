#include "compiler/evaluate/active.hpp"

#include <fmt/format.h>

namespace rodwright {

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
        const std::optional<bool> yes = evaluator.condition(statement.child(0), scope);
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
