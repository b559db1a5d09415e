// The state of one instantiate(): private to compiler/evaluate/instantiate*.cpp.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "compiler/evaluate/instantiate.hpp"
#include "compiler/evaluate/part_references.hpp"

namespace rodwright {

class Instantiation {
  public:
    Instantiation(Design& design, Evaluator& evaluator, const RowCounts& counts, Statements& out)
        : design_(design), evaluator_(evaluator), counts_(counts), out_(out) {}

    void run(const DesignOptions& options);

  private:
    // A container whose parts are declared and whose lines wait to be evaluated.
    struct Pending {
        Container* container;
        std::vector<Syntax> statements;
        PartReferences* references;
    };

    Design& design_;
    Evaluator& evaluator_;
    const RowCounts& counts_;
    Statements& out_;
    std::vector<Pending> pending_;
    std::vector<Syntax> overlay_;  // `made` and `done` outside the piece
    std::map<std::string, Syntax, std::less<>> local_assemblies_;
    std::size_t depth_ = 0;

    // instantiate.cpp
    Scope& new_scope(Scope* parent, References* references);
    PartReferences* new_references(PartReferences references);
    Unknown new_unknowns(std::size_t count);
    void report(Diagnostic diagnostic) { evaluator_.report(std::move(diagnostic)); }
    void refuse(const Syntax& statement, std::string_view where);
    void not_yet(const Syntax& statement, std::string_view what);
    std::vector<Syntax> active(const std::vector<Syntax>& statements, Scope& scope);
    void apply_overrides(const Syntax& piece, const DesignOptions& options, Scope& scope);
    void apply_variant(const Syntax& piece, const std::string& name, Scope& scope);
    void override_param(const Syntax& name, const Syntax& expression, Scope& scope, Scope& values);
    void check_bounds(const Syntax& param, Scope& scope);

    // instantiate_parts.cpp
    void declare(Container& container, const std::vector<Syntax>& statements);
    void declare_one(Container& container, const Syntax& statement);
    void declare_part(Container& container, const Syntax& part);
    long row_count(const Syntax& count, Scope& scope, PartDeclaration& declaration);
    bool name_is_free(const Container& container, const Syntax& name);
    void add_instances(PartDeclaration& declaration, std::size_t index);
    void declare_place(Container& container, const Syntax& place);
    void bind_parameters(const Syntax& assembly, const Syntax& place, Scope& scope, Scope& caller);
    void declare_wood(const Syntax& wood);
    void declare_unit(const Syntax& unit, Scope& scope);

    // instantiate_lines.cpp
    void evaluate(const Pending& pending);
    void evaluate_one(const Pending& pending, const Syntax& statement);
    void equation(const Syntax& equation, Scope& scope);
    void note_failure(const Syntax& line, Scope& scope);
    void part_body(std::size_t instance);
    void body_statement(std::size_t instance, const Syntax& statement, Scope& scope);
    void space(const Pending& pending, const Syntax& space);
    void row_equations(const Row& row, const Linear& from, const Linear& to);
    void join(const Pending& pending, const Syntax& join);
    std::vector<PartPattern> members(const Pending& pending, const Syntax& side);
    void load(const Pending& pending, const Syntax& load);
    void use(const Pending& pending, const Syntax& use);
    void match(const Pending& pending, const Syntax& match);
    void glued(PartDeclaration& declaration, const Syntax& glued, Scope& scope);
    void show(PartDeclaration& declaration, const Syntax& word);
    void finish(const Syntax& finish, Scope& scope);
    void glue(const Syntax& line);

    // instantiate_made.cpp
    void made(const Pending& pending, const Syntax& line);
    void measured(const Pending& pending, const Syntax& line, MadeStatement& made);
    bool spend_on_copies(const PartPattern& pattern);
    void lay_over();
    void done(const Pending& pending, const Syntax& line);
    void take(PartDeclaration& declaration, const Syntax& line, Scope& scope);

    // instantiate_checks.cpp
    void accept(const Pending& pending, const Syntax& accept);
    void opens(const Pending& pending, const Syntax& opens);
    void climate(const Syntax& climate, Scope& scope);
    std::optional<Rational> share(const Syntax& expression, Scope& scope, const Rational& most);
};

}  // namespace rodwright
