#include <fmt/format.h>

#include "compiler/evaluate/instantiation.hpp"
#include "compiler/evaluate/words.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

namespace {

// `leg[left front]`, `slat[3]`, `chest/rail[top]`.
std::string copy_name(const PartDeclaration& declaration, const Hands& hands, long row) {
    std::string inside;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (hands[axis] < 0) continue;
        if (!inside.empty()) inside += ' ';
        inside += face_name(face_of(static_cast<Axis>(axis), hands[axis] == 1));
    }
    if (row > 0) inside += (inside.empty() ? "" : " ") + std::to_string(row);
    const std::string prefix = declaration.container->name.empty() ? "" : declaration.container->name + "/";
    return prefix + declaration.name + (inside.empty() ? "" : "[" + inside + "]");
}

// The n-th combination of hands: the first axis changes fastest, all near first.
Hands hands_of(const PartDeclaration& declaration, std::size_t n) {
    Hands hands = no_hands;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (!declaration.handed[axis]) continue;
        hands[axis] = static_cast<std::int8_t>(n % 2);
        n /= 2;
    }
    return hands;
}

}  // namespace

void Instantiation::declare(Container& container, const std::vector<Syntax>& statements) {
    for (const Syntax& statement : statements) {
        if (statement.kind() == NodeKind::assembly) {
            local_assemblies_.emplace(std::string(statement.child(0).text()), statement);
        }
    }
    for (const Syntax& statement : statements) declare_one(container, statement);
}

void Instantiation::declare_one(Container& container, const Syntax& statement) {
    switch (statement.kind()) {
        case NodeKind::part:
            declare_part(container, statement);
            break;
        case NodeKind::place:
            declare_place(container, statement);
            break;
        case NodeKind::wood:
            declare_wood(statement);
            break;
        case NodeKind::unit:
            declare_unit(statement, *container.scope);
            break;
        default:
            break;
    }
}

bool Instantiation::name_is_free(const Container& container, const Syntax& name) {
    Span earlier;
    if (const auto part = container.parts.find(name.text()); part != container.parts.end()) {
        earlier = out_.declarations[part->second].where;
    } else if (const auto found = container.assemblies.find(name.text());
               found != container.assemblies.end()) {
        earlier = found->second->where;
    } else if (name.text() == "piece") {
        report(diagnose(Code::defined_twice, name.span(),
                        "`piece` means the whole piece, nothing else can have that name"));
        return false;
    } else {
        return true;
    }
    report(diagnose(Code::defined_twice, name.span(), fmt::format("there are two parts `{}`", name.text()))
               .label(earlier, "the first is here"));
    return false;
}

long Instantiation::row_count(const Syntax& count, Scope& scope, PartDeclaration& declaration) {
    const Syntax wanted = count.child(0);
    if (wanted.kind() == NodeKind::word && wanted.text() == "fit") {
        declaration.fit = true;
        const auto found = counts_.find(row_key(declaration));
        return found == counts_.end() ? 1 : found->second;
    }
    constexpr long most_readable = 1'000'000'000;
    const long number = evaluator_.whole_number(wanted, scope, 1, most_readable).value_or(1);
    if (number <= static_cast<long>(limits::row_count)) return number;
    report(diagnose(Code::too_large, count.span(),
                    fmt::format("a row of {} parts; at most {} can be made", number, limits::row_count)));
    return 1;
}

void Instantiation::declare_part(Container& container, const Syntax& part) {
    const Syntax name = part.child(0);
    if (!name_is_free(container, name)) return;
    PartDeclaration declaration;
    declaration.name = name.text();
    declaration.syntax = part;
    declaration.container = &container;
    declaration.where = name.span();
    if (const Syntax wood = part.find(NodeKind::of)) declaration.wood = wood.child(0).text();
    if (const Syntax handed = part.find(NodeKind::handed)) {
        for (const Syntax& word : handed.children()) {
            if (const auto axis = axis_from(word.text()))
                declaration.handed[static_cast<std::size_t>(*axis)] = true;
        }
    }
    if (const Syntax count = part.find(NodeKind::count)) {
        declaration.row = true;
        declaration.count = row_count(count, *container.scope, declaration);
    }
    const std::size_t index = out_.declarations.size();
    container.parts.emplace(declaration.name, index);
    add_instances(declaration, index);
    out_.declarations.push_back(std::move(declaration));
}

void Instantiation::add_instances(PartDeclaration& declaration, std::size_t index) {
    const std::size_t copies = declaration.copies();
    const std::size_t added = copies * static_cast<std::size_t>(declaration.count);
    if (out_.instances.size() + added > limits::instances) {
        report(diagnose(Code::too_large, declaration.where,
                        fmt::format("the piece would have more than {} parts", limits::instances)));
        declaration.count = 0;
    }
    for (long row = 1; row <= declaration.count; ++row) {
        const std::size_t master = out_.instances.size();
        for (std::size_t n = 0; n < copies; ++n) {
            Instance instance;
            instance.hands = hands_of(declaration, n);
            instance.row = declaration.row ? row : 0;
            instance.name = copy_name(declaration, instance.hands, instance.row);
            instance.declaration = index;
            instance.master = master;
            if (n == 0) instance.first = new_unknowns(6);
            declaration.instances.push_back(out_.instances.size());
            out_.instances.push_back(std::move(instance));
        }
    }
}

void Instantiation::bind_parameters(const Syntax& assembly, const Syntax& place, Scope& scope,
                                    Scope& caller) {
    const std::vector<Syntax> parameters = assembly.all(NodeKind::parameter);
    for (const Syntax& parameter : parameters) {
        const Syntax name = parameter.child(0);
        const Syntax otherwise = parameter.child(1);
        scope.define(name.text(), {otherwise, &scope, name.span(), true, {}, {}});
    }
    std::size_t position = 0;
    for (const Syntax& argument : place.all(NodeKind::argument)) {
        const bool has_name = argument.child(1) ? true : false;
        const Syntax value = argument.child(has_name ? 1 : 0);
        std::string_view name = has_name ? argument.child(0).text() : std::string_view();
        if (!has_name && position < parameters.size()) name = parameters[position++].child(0).text();
        if (name.empty() || scope.find_here(name) == nullptr) {
            report(diagnose(Code::bad_argument, argument.span(),
                            fmt::format("`{}` has no parameter for this", assembly.child(0).text())));
            continue;
        }
        scope.replace(name, {value, &caller, argument.span(), true, {}, {}});
    }
    for (const Syntax& parameter : parameters) {
        const std::string_view name = parameter.child(0).text();
        if (scope.find_here(name)->expression) continue;
        report(diagnose(Code::bad_argument, place.span(), fmt::format("`{}` must be given", name))
                   .label(parameter.span(), "it has no default here"));
        scope.replace(name,
                      {parameter.child(0), &scope, parameter.span(), true, Definition::State::done, {}});
    }
}

void Instantiation::declare_place(Container& container, const Syntax& place) {
    const Syntax what = place.child(0);
    const Syntax name = place.child(1);
    if (!name_is_free(container, name)) return;
    const auto local = local_assemblies_.find(what.text());
    const bool is_local = local != local_assemblies_.end();
    const Syntax assembly = is_local ? local->second : design_.assembly(what.text());
    if (!assembly) {
        report(
            diagnose(Code::unknown_name, what.span(), fmt::format("there is no assembly `{}`", what.text())));
        return;
    }
    if (depth_ >= limits::call_depth) {
        report(diagnose(Code::too_large, place.span(),
                        fmt::format("assemblies within assemblies more than {} deep", limits::call_depth)));
        return;
    }
    if (out_.containers.size() > limits::assemblies) {
        report(diagnose(Code::too_large, place.span(),
                        fmt::format("the piece would have more than {} assemblies", limits::assemblies)));
        return;
    }
    const Syntax body = assembly.find(NodeKind::block);
    if (!evaluator_.spend(body.node_count(), place.span())) return;
    Container& placed = out_.containers.emplace_back();
    placed.name = (container.name.empty() ? "" : container.name + "/") + std::string(name.text());
    placed.parent = &container;
    placed.first = new_unknowns(6);
    placed.where = name.span();
    placed.body = place.span();
    PartReferences* references = new_references({out_, placed, placed});
    // An assembly written in the piece sees the piece's names; one from a file of its own sees only its own.
    Scope& scope = new_scope(is_local ? out_.containers.front().scope : nullptr, references);
    placed.scope = &scope;
    container.assemblies.emplace(std::string(name.text()), &placed);
    bind_parameters(assembly, place, scope, *container.scope);
    const std::vector<Syntax> statements = active(body.children(), scope);
    pending_.push_back({&placed, statements, references});
    ++depth_;
    declare(placed, statements);
    --depth_;
}

void Instantiation::declare_wood(const Syntax& wood) {
    const std::vector<Syntax> words = wood.children();
    WoodStatement statement;
    statement.name = words[0].text();
    statement.species = words[1].text();
    statement.where = words[0].span();
    statement.species_span = words[1].span();
    for (std::size_t i = 2; i < words.size(); ++i) {
        statement.cut += (statement.cut.empty() ? "" : " ") + std::string(words[i].text());
    }
    for (const WoodStatement& earlier : out_.woods) {
        if (earlier.name != statement.name) continue;
        report(diagnose(Code::defined_twice, statement.where,
                        fmt::format("there are two woods `{}`", statement.name))
                   .label(earlier.where, "the first is here"));
        return;
    }
    out_.woods.push_back(std::move(statement));
}

void Instantiation::declare_unit(const Syntax& unit, Scope& scope) {
    const bool inch = unit.child(0).text() == "in";
    out_.style.unit = inch ? LengthUnit::inch : LengthUnit::millimetre;
    out_.style.step = inch ? ratio(1, 32) : ratio(1, 2);
    const Syntax to = unit.find(NodeKind::to);
    if (!to) return;
    const std::optional<Quantity> step = evaluator_.quantity(to.child(0), scope);
    if (!step) return;
    const bool may =
        step->is_number() && step->value > 0 && step->value <= 1 && step->value.get_den() <= 1024;
    if (may) {
        out_.style.step = step->value;
    } else {
        report(diagnose(Code::bad_argument, to.span(), "lengths cannot be shown to this step")
                   .hint("write a fraction such as `1/16`, `1/32` or `1/64`; for millimetres `1`, `1/2` or "
                         "`1/10`"));
    }
}

}  // namespace rodwright
