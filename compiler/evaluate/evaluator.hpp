// Expressions to values.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/evaluate/scope.hpp"
#include "compiler/evaluate/value.hpp"
#include "compiler/quantity/format.hpp"

namespace rodwright {

// The size of a tool of the shop nearest to a length: `nearest chisel to x`. Empty if the shop has no such
// tool.
using NearestTool =
    std::function<std::optional<Rational>(std::string_view tool, const Rational& millimetres)>;
using UnknownValues = std::vector<std::optional<Rational>>;

class Evaluator {
  public:
    Evaluator(Diagnostics& diagnostics, NearestTool nearest)
        : diagnostics_(diagnostics), nearest_(std::move(nearest)) {}

    // One that reports elsewhere, knows the same values of the unknowns and shares what it may still cost.
    // Should that be used up, it is left to `like` to say so.
    Evaluator(Diagnostics& diagnostics, const Evaluator& like)
        : diagnostics_(diagnostics),
          nearest_(like.nearest_),
          values_(like.values_),
          effort_(like.effort_),
          reports_effort_(false) {}

    // Empty if there is no value; the reason has been reported.
    std::optional<Value> evaluate(const Syntax& expression, Scope& scope);

    // The same, and the value must be of that kind. `wanted` completes "expected ...".
    std::optional<Quantity> quantity(const Syntax& expression, Scope& scope);
    std::optional<Rational> length(const Syntax& expression, Scope& scope);
    std::optional<Linear> linear_length(const Syntax& expression, Scope& scope);
    std::optional<bool> condition(const Syntax& expression, Scope& scope);
    std::optional<long> whole_number(const Syntax& expression, Scope& scope, long least, long most);

    // The value of a definition, evaluated now if it was not yet.
    std::optional<Value> value_of(Definition& definition, std::string_view name, Span asked_at);

    // From here on the unknowns have these values, and a size that depends on them is a plain length.
    void settle(const UnknownValues* values) { values_ = values; }
    Value settled(Value value) const;

    // Counts steps towards limits::evaluating: an expression and what its value takes (steps_of), and the
    // nodes of every body, for every copy and every use of it. False past the limit: reported, once, and
    // nothing has a value any more.
    bool spend(std::size_t steps, Span at);

    Diagnostics& diagnostics() { return diagnostics_; }
    void report(Diagnostic diagnostic) { diagnostics_.add(std::move(diagnostic)); }
    const NearestTool& nearest() const { return nearest_; }

  private:
    Diagnostics& diagnostics_;
    NearestTool nearest_;
    const UnknownValues* values_ = nullptr;
    std::size_t depth_ = 0;
    std::shared_ptr<std::size_t> effort_ = std::make_shared<std::size_t>(0);
    bool reports_effort_ = true;

    std::optional<Value> dispatch(const Syntax& expression, Scope& scope);
    std::optional<Value> number(const Syntax& expression);
    std::optional<Value> name(const Syntax& expression, Scope& scope);
    std::optional<Value> unary(const Syntax& expression, Scope& scope);
    std::optional<Value> binary(const Syntax& expression, Scope& scope);
    std::optional<Value> choice(const Syntax& expression, Scope& scope);
    std::optional<Value> nearest_tool(const Syntax& expression, Scope& scope);
    std::optional<Value> point(const Syntax& expression, Scope& scope);
};

// Arithmetic and comparison of two values; reports mismatches at the operands. In operators.cpp.
std::optional<Value> combine(const Syntax& expression, const Value& left, const Value& right,
                             Diagnostics& diagnostics);

// `max(a, b)`, `box(a, b, c)`. In functions.cpp.
std::optional<Value> call_function(const Syntax& call, Scope& scope, Evaluator& evaluator);
std::vector<std::string> function_names();

}  // namespace rodwright
