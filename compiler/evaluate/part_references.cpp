#include "compiler/evaluate/part_references.hpp"

#include <fmt/format.h>

#include <span>

#include "compiler/evaluate/words.hpp"

namespace rodwright {

namespace {

// The face or the extent of something whose faces `coordinate` gives.
template <typename Coordinate>
std::optional<Linear> face_or_size(std::string_view name, const Coordinate& coordinate) {
    if (const std::optional<Face> face = face_from(name)) return coordinate(*face);
    if (const std::optional<Axis> axis = axis_from(name)) {
        return coordinate(face_of(*axis, true)) - coordinate(face_of(*axis, false));
    }
    return std::nullopt;
}

std::vector<std::string> face_and_size_names() {
    std::vector<std::string> names;
    for (const Face face : all_faces) names.emplace_back(face_name(face));
    for (const Axis axis : all_axes) names.emplace_back(axis_name(axis));
    return names;
}

void report_unknown(const Syntax& at, std::string message, std::vector<std::string> candidates,
                    std::string_view otherwise, Evaluator& evaluator) {
    Diagnostic diagnostic = diagnose(Code::unknown_name, at.span(), std::move(message));
    const std::string near = nearest_name(at.text(), std::move(candidates));
    diagnostic.help = near.empty() ? std::string(otherwise) : fmt::format("did you mean `{}`?", near);
    evaluator.report(std::move(diagnostic));
}

// Of parts and assemblies that can be meant in a container.
std::vector<std::string> names_from(const Container& from, bool enclosing) {
    std::vector<std::string> names = {"piece"};
    for (const Container* container = &from; container != nullptr; container = container->parent) {
        for (const auto& [known, index] : container->parts) names.push_back(known);
        for (const auto& [known, index] : container->assemblies) names.push_back(known);
        if (!enclosing) break;
    }
    return names;
}

void report_no_member(const Syntax& at, Evaluator& evaluator) {
    report_unknown(at.child(1), fmt::format("`{}` is no face or size", at.child(1).text()),
                   face_and_size_names(),
                   "faces are left right front back bottom top, sizes are wide deep tall", evaluator);
}

bool fits(const Hands& wanted, const Hands& hands) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (wanted[axis] >= 0 && hands[axis] >= 0 && wanted[axis] != hands[axis]) return false;
    }
    return true;
}

std::string copy_names(const Statements& statements, const std::vector<std::size_t>& instances) {
    constexpr std::size_t enough = 4;
    std::string text;
    for (std::size_t i = 0; i < instances.size() && i < enough; ++i) {
        text += fmt::format("{}`{}`", i == 0 ? "" : ", ", statements.instances[instances[i]].name);
    }
    return instances.size() > enough ? text + ", ..." : text;
}

}  // namespace

std::vector<std::size_t> matching(const Statements& statements, const PartPattern& pattern) {
    const PartDeclaration& declaration = statements.declarations[pattern.declaration];
    std::span<const std::size_t> instances(declaration.instances);
    if (pattern.row && !instances.empty()) {
        const auto place = static_cast<std::size_t>(*pattern.row - 1);
        instances = instances.subspan(place * declaration.copies(), declaration.copies());
    }
    std::vector<std::size_t> result;
    for (const std::size_t index : instances) {
        if (fits(pattern.hands, statements.instances[index].hands)) result.push_back(index);
    }
    return result;
}

std::vector<Linear> assumed_values(const Statements& statements, const AssumedSame& assumption) {
    std::vector<Linear> result;
    for (const std::size_t copy : matching(statements, assumption.copies)) {
        const auto coordinate = [&](Face face) { return statements.face(copy, face); };
        if (auto value = face_or_size(assumption.name, coordinate)) result.push_back(std::move(*value));
    }
    return result;
}

std::optional<Value> PartReferences::own(std::string_view name, const Syntax&, Evaluator& evaluator) {
    std::optional<Linear> value;
    if (instance_) {
        const Instance& instance = statements_.instances[*instance_];
        if (name == "index" && instance.row > 0) return Quantity::number(instance.row);
        value = face_or_size(name, [&](Face face) { return statements_.face(*instance_, face); });
    } else {
        value = face_or_size(name, [&](Face face) { return statements_.face(own_, face); });
    }
    if (!value) return std::nullopt;
    return evaluator.settled(std::move(*value));
}

std::vector<std::string> PartReferences::names() const {
    return face_and_size_names();
}

std::optional<Value> PartReferences::member(const Syntax& at, Scope& scope, Evaluator& evaluator) {
    const std::optional<Target> found = target(at.child(0), scope, evaluator);
    if (!found) return std::nullopt;
    const std::string_view name = at.child(1).text();
    if (const auto* pattern = std::get_if<PartPattern>(&*found))
        return of_part(*pattern, at, name, evaluator);
    const Container& container = *std::get<const Container*>(*found);
    std::optional<Linear> value =
        face_or_size(name, [&](Face face) { return statements_.face(container, face); });
    if (value) return evaluator.settled(std::move(*value));
    report_no_member(at, evaluator);
    return std::nullopt;
}

std::optional<Value> PartReferences::of_part(const PartPattern& pattern, const Syntax& at,
                                             std::string_view name, Evaluator& evaluator) {
    PartPattern filled = pattern;
    fill_from_context(filled);
    const PartDeclaration& declaration = statements_.declarations[filled.declaration];
    // Every place of a row has the same hands.
    PartPattern first_place = filled;
    if (declaration.row && !filled.row) first_place.row = 1;
    const std::vector<std::size_t> copies = matching(statements_, first_place);
    if (copies.empty()) {
        evaluator.report(diagnose(Code::which_copy, at.child(0).span(), "there is no such copy"));
        return std::nullopt;
    }
    const auto value_of = [&](std::size_t copy) {
        return face_or_size(name, [&](Face face) { return statements_.face(copy, face); });
    };
    std::optional<Linear> value = value_of(copies.front());
    if (!value) {
        report_no_member(at, evaluator);
        return std::nullopt;
    }
    // A mirror image has its faces elsewhere along the axis it is mirrored on, and nowhere else.
    const std::optional<Face> face = face_from(name);
    if (face) {
        const auto axis = static_cast<std::size_t>(axis_of(*face));
        if (declaration.handed[axis] && filled.hands[axis] < 0) {
            evaluator.report(
                diagnose(Code::which_copy, at.span(),
                         fmt::format("which `{}`? {} have their {} in different places", declaration.name,
                                     copy_names(statements_, matching(statements_, filled)), name))
                    .hint(fmt::format("write `{}[{}].{}`", declaration.name,
                                      face_name(face_of(axis_of(*face), false)), name)));
            return std::nullopt;
        }
    }
    const bool any = declaration.row && !filled.row && declaration.count > 1;
    if (any &&
        statements_.assumed.emplace(at.tree->file(), at.node, filled.declaration, filled.hands).second) {
        filled.hands = statements_.instances[copies.front()].hands;
        statements_.assumptions.push_back({filled, std::string(name), at});
    }
    return evaluator.settled(std::move(*value));
}

void PartReferences::fill_from_context(PartPattern& pattern) const {
    if (!instance_) return;
    const Instance& here = statements_.instances[*instance_];
    const PartDeclaration& declaration = statements_.declarations[pattern.declaration];
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (declaration.handed[axis] && pattern.hands[axis] < 0) pattern.hands[axis] = here.hands[axis];
    }
    if (pattern.declaration == here.declaration && declaration.row && !pattern.row) pattern.row = here.row;
}

std::optional<PartReferences::Target> PartReferences::target(const Syntax& at, Scope& scope,
                                                             Evaluator& evaluator) {
    switch (at.kind()) {
        case NodeKind::name:
            return named(at, container_, true, evaluator);
        case NodeKind::copy:
            return copy(at, scope, evaluator);
        case NodeKind::member: {
            const std::optional<Target> base = target(at.child(0), scope, evaluator);
            if (!base) return std::nullopt;
            if (const auto* container = std::get_if<const Container*>(&*base)) {
                return named(at.child(1), **container, false, evaluator);
            }
            break;
        }
        case NodeKind::broken:
            return std::nullopt;
        default:
            break;
    }
    evaluator.report(diagnose(Code::wrong_kind_of_value, at.span(), "expected the name of a part here"));
    return std::nullopt;
}

std::optional<PartReferences::Target> PartReferences::named(const Syntax& name, const Container& from,
                                                            bool enclosing, Evaluator& evaluator) {
    const std::string_view text = name.text();
    if (enclosing && text == "piece") return &from;
    for (const Container* container = &from; container != nullptr; container = container->parent) {
        if (const auto part = container->parts.find(text); part != container->parts.end()) {
            return PartPattern{part->second, no_hands, {}, {}, name.span()};
        }
        if (const auto found = container->assemblies.find(text); found != container->assemblies.end()) {
            return static_cast<const Container*>(found->second);
        }
        if (!enclosing) break;
    }
    std::vector<std::string> candidates;
    if (!evaluator.diagnostics().full()) candidates = names_from(from, enclosing);
    report_unknown(name, fmt::format("there is no part `{}`", text), std::move(candidates),
                   fmt::format("declare it: `part {} of ... {{ ... }}`", text), evaluator);
    return std::nullopt;
}

std::optional<PartReferences::Target> PartReferences::copy(const Syntax& at, Scope& scope,
                                                           Evaluator& evaluator) {
    std::optional<Target> base = target(at.child(0), scope, evaluator);
    if (!base) return std::nullopt;
    auto* pattern = std::get_if<PartPattern>(&*base);
    if (pattern == nullptr) {
        evaluator.report(diagnose(Code::which_copy, at.span(), "an assembly has no copies to choose from"));
        return std::nullopt;
    }
    std::vector<Syntax> chosen = at.children();
    chosen.erase(chosen.begin());
    pattern->where = at.span();
    const bool words = !chosen.empty() && chosen.front().kind() == NodeKind::word;
    if (words) return add_words(*pattern, at, chosen, evaluator) ? base : std::nullopt;
    const PartDeclaration& declaration = statements_.declarations[pattern->declaration];
    if (!declaration.row) {
        evaluator.report(
            diagnose(Code::which_copy, at.span(), fmt::format("`{}` is not a row", declaration.name))
                .label(declaration.where, "declared here, without a count"));
        return std::nullopt;
    }
    pattern->row = evaluator.whole_number(chosen.front(), scope, 1, declaration.count);
    return pattern->row ? base : std::nullopt;
}

bool PartReferences::add_words(PartPattern& pattern, const Syntax& at, const std::vector<Syntax>& words,
                               Evaluator& evaluator) {
    const PartDeclaration& declaration = statements_.declarations[pattern.declaration];
    for (const Syntax& word : words) {
        if (declaration.row && (word.text() == "first" || word.text() == "last")) {
            pattern.row = word.text() == "first" ? 1 : declaration.count;
            continue;
        }
        const std::optional<Face> hand = face_from(word.text());
        const std::size_t axis = hand ? static_cast<std::size_t>(axis_of(*hand)) : 0;
        if (!hand || !declaration.handed[axis]) {
            const std::string axis_word(hand ? axis_name(axis_of(*hand)) : "");
            evaluator.report(
                diagnose(Code::which_copy, word.span(),
                         fmt::format("`{}` has no {} copy", declaration.name, word.text()))
                    .label(declaration.where, "declared here")
                    .hint(hand ? fmt::format("`handed {}` would make one", axis_word)
                               : std::string("copies of a row are chosen by number, `first` or `last`")));
            return false;
        }
        pattern.hands[axis] = is_far(*hand) ? 1 : 0;
    }
    pattern.where = at.span();
    return true;
}

std::optional<PartPattern> PartReferences::pattern(const Syntax& at, Scope& scope, Evaluator& evaluator) {
    std::optional<Face> face;
    Syntax part = at;
    if (at.kind() == NodeKind::member) {
        face = face_from(at.child(1).text());
        if (face) part = at.child(0);
    }
    const std::optional<Target> found = target(part, scope, evaluator);
    if (!found) return std::nullopt;
    const auto* pattern = std::get_if<PartPattern>(&*found);
    if (pattern == nullptr) {
        evaluator.report(
            diagnose(Code::wrong_kind_of_value, at.span(), "a part is needed here, this is an envelope"));
        return std::nullopt;
    }
    PartPattern result = *pattern;
    result.face = face;
    result.where = at.span();
    return result;
}

}  // namespace rodwright
