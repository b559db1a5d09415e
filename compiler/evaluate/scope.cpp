#include "compiler/evaluate/scope.hpp"

namespace rodwright {

std::vector<Syntax> Syntax::children() const {
    std::vector<Syntax> result;
    for (const NodeId id : tree->children(node)) result.push_back({tree, id});
    return result;
}

std::vector<Syntax> Syntax::all(NodeKind wanted) const {
    std::vector<Syntax> result;
    for (const NodeId id : tree->children(node)) {
        if (tree->kind(id) == wanted) result.push_back({tree, id});
    }
    return result;
}

std::string unquoted(const Syntax& string) {
    const std::string_view text = string.text();
    return text.size() < 2 ? std::string() : std::string(text.substr(1, text.size() - 2));
}

const Definition* Scope::define(std::string_view name, Definition definition) {
    const auto found = definitions_.find(name);
    if (found != definitions_.end()) return &found->second;
    definitions_.emplace(std::string(name), std::move(definition));
    return nullptr;
}

void Scope::replace(std::string_view name, Definition definition) {
    definitions_.insert_or_assign(std::string(name), std::move(definition));
}

Definition* Scope::find_here(std::string_view name) {
    const auto found = definitions_.find(name);
    return found == definitions_.end() ? nullptr : &found->second;
}

Definition* Scope::find(std::string_view name) {
    for (Scope* scope = this; scope != nullptr; scope = scope->parent_) {
        if (Definition* found = scope->find_here(name)) return found;
    }
    return nullptr;
}

References* Scope::references() const {
    for (const Scope* scope = this; scope != nullptr; scope = scope->parent_) {
        if (scope->references_ != nullptr) return scope->references_;
    }
    return nullptr;
}

std::vector<std::string> Scope::names() const {
    std::vector<std::string> result;
    for (const Scope* scope = this; scope != nullptr; scope = scope->parent_) {
        for (const auto& [name, definition] : scope->definitions_) result.push_back(name);
    }
    return result;
}

}  // namespace rodwright
