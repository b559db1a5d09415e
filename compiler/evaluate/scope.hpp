// Names and what they stand for.
//
// A definition is evaluated when it is first asked for, so that lets and parameters may stand in any order; a
// definition that is asked for while it is being evaluated is a circle.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/evaluate/value.hpp"
#include "grammar/tree.hpp"

namespace rodwright {

class Scope;

// A node of a syntax tree, with the tree.
struct Syntax {
    const Tree* tree = nullptr;
    NodeId node = NodeId::none;

    NodeKind kind() const { return tree->kind(node); }
    Span span() const { return tree->span(node); }
    std::string_view text() const { return tree->text(node); }
    Syntax child(std::size_t n) const { return {tree, tree->child(node, n)}; }
    Syntax find(NodeKind kind) const { return {tree, tree->find(node, kind)}; }
    explicit operator bool() const { return node != NodeId::none; }
    std::vector<Syntax> children() const;
    std::size_t node_count() const { return (*tree)[node].after - static_cast<std::size_t>(node); }
    std::vector<Syntax> all(NodeKind kind) const;
};

// The text of a string node, without its quotes.
std::string unquoted(const Syntax& string);

struct Definition {
    enum class State : std::uint8_t { waiting, running, done };

    Syntax expression;
    Scope* scope = nullptr;  // where the expression's own names are looked up
    Span name_span;
    bool parameter = false;  // a param, or a joint's parameter: may be given from outside
    State state = State::waiting;
    std::optional<Value> value;  // empty when done: an error, already reported
};

class Evaluator;

// What the language asks of the surroundings of an expression beyond plain names: faces and sizes of parts,
// members of joints.
class References {
  public:
    virtual ~References() = default;
    // A bare name that may be a face or size of the part the expression stands in: `left`, `wide`.
    // Not found: nullopt.
    virtual std::optional<Value> own(std::string_view name, const Syntax& at, Evaluator& evaluator) = 0;
    // `base.name`, `base[copy].name`; reports its errors.
    virtual std::optional<Value> member(const Syntax& at, Scope& scope, Evaluator& evaluator) = 0;
    // Names that could be meant, for suggestions.
    virtual std::vector<std::string> names() const = 0;
};

class Scope {
  public:
    explicit Scope(Scope* parent = nullptr, References* references = nullptr)
        : parent_(parent), references_(references) {}

    // The earlier definition if there is one already, and then nothing changes.
    const Definition* define(std::string_view name, Definition definition);
    // In this scope only, replacing what was there: an override from outside.
    void replace(std::string_view name, Definition definition);
    Definition* find(std::string_view name);  // here or in an enclosing scope
    Definition* find_here(std::string_view name);
    References* references() const;  // the nearest
    Scope* parent() const { return parent_; }
    std::vector<std::string> names() const;  // of all enclosing scopes too
    const std::map<std::string, Definition, std::less<>>& here() const { return definitions_; }

  private:
    Scope* parent_;
    References* references_;
    std::map<std::string, Definition, std::less<>> definitions_;
};

}  // namespace rodwright
