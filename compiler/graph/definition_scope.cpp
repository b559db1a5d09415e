#include "compiler/graph/definition_scope.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/evaluate/active.hpp"

namespace rodwright {

std::optional<std::size_t> MemberReferences::index(std::string_view role) const {
    for (std::size_t i = 0; i < members_.size(); ++i) {
        if (members_[i].role == role) return i;
    }
    return std::nullopt;
}

std::optional<Rational> MemberReferences::size(std::size_t member, std::string_view name) const {
    const auto& sizes = members_[member].sizes;
    const auto found = std::ranges::find(sizes, name, [](const auto& each) { return each.first; });
    if (found == sizes.end()) return std::nullopt;
    const auto index = static_cast<std::size_t>(found - sizes.begin());
    const bool known = std::ranges::any_of(
        reads_, [&](const SizeRead& read) { return read.member == member && read.size == index; });
    if (!known) reads_.push_back({member, index, found->second});
    return found->second;
}

std::optional<Value> MemberReferences::own(std::string_view name, const Syntax&, Evaluator&) {
    if (scope_.find(name) != nullptr) return std::nullopt;
    return Word{std::string(name)};
}

std::optional<Value> MemberReferences::member(const Syntax& at, Scope&, Evaluator& evaluator) {
    const Syntax base = at.child(0);
    const std::optional<std::size_t> member =
        base.kind() == NodeKind::name ? index(base.text()) : std::nullopt;
    if (!member) {
        evaluator.report(
            diagnose(Code::unknown_name, base.span(), fmt::format("`{}` is no member here", base.text())));
        return std::nullopt;
    }
    const Syntax wanted = at.child(1);
    if (std::optional<Rational> found = size(*member, wanted.text()))
        return Quantity::length(std::move(*found));
    std::vector<std::string> known;
    for (const auto& [name, value] : members_[*member].sizes) known.emplace_back(name);
    Diagnostic diagnostic =
        diagnose(Code::unknown_name, wanted.span(), fmt::format("a member has no `{}`", wanted.text()));
    const std::string near = nearest_name(wanted.text(), known);
    if (!near.empty()) diagnostic.help = fmt::format("did you mean `{}`?", near);
    evaluator.report(std::move(diagnostic));
    return std::nullopt;
}

std::vector<Syntax> parameters_of(const Syntax& definition) {
    std::vector<Syntax> result;
    for (const Syntax& statement : definition.find(NodeKind::block).all(NodeKind::equation)) {
        if (statement.child(0).kind() == NodeKind::name) result.push_back(statement);
    }
    return result;
}

namespace {

struct Argument {
    Syntax parameter;  // an equation node; empty where there is none
    Syntax value;
};

Syntax find_parameter(const std::vector<Syntax>& parameters, std::string_view name) {
    for (const Syntax& parameter : parameters) {
        if (parameter.child(0).text() == name) return parameter;
    }
    return {};
}

void report_no_parameter(const DefinitionCall& call, const Syntax& argument,
                         const std::vector<Syntax>& parameters, std::string_view name, Evaluator& evaluator) {
    std::vector<std::string> names;
    for (const Syntax& parameter : parameters) names.emplace_back(parameter.child(0).text());
    const std::string_view definition = call.definition.child(0).text();
    Diagnostic diagnostic =
        diagnose(Code::bad_argument, argument.span(),
                 name.empty() ? fmt::format("`{}` takes only {} values", definition, names.size())
                              : fmt::format("`{}` has no `{}`", definition, name));
    const std::string near = nearest_name(name, names);
    diagnostic.help = near.empty() ? fmt::format("its values are {}", fmt::join(names, ", "))
                                   : fmt::format("did you mean `{}`?", near);
    evaluator.report(std::move(diagnostic));
}

// Pairs the arguments of a call with parameters.
std::optional<std::vector<Argument>> pair_arguments(const DefinitionCall& call, Evaluator& evaluator) {
    const std::vector<Syntax> parameters = parameters_of(call.definition);
    std::vector<Argument> result;
    std::size_t position = 0;
    bool good = true;
    for (const Syntax& argument : call.call.all(NodeKind::argument)) {
        const bool named = static_cast<bool>(argument.child(1));
        const std::string_view name = named ? argument.child(0).text() : std::string_view();
        Syntax parameter = named ? find_parameter(parameters, name) : Syntax{};
        if (!named && position < parameters.size()) parameter = parameters[position++];
        if (!parameter) {
            report_no_parameter(call, argument, parameters, name, evaluator);
            good = false;
            continue;
        }
        result.push_back({parameter, argument.child(named ? 1 : 0)});
    }
    if (!good) return std::nullopt;
    return result;
}

bool defines(const Syntax& definition, std::string_view name) {
    const std::vector<Syntax> statements = definition.find(NodeKind::block).children();
    return std::ranges::any_of(statements, [&](const Syntax& statement) {
        return defines_name(statement, true) && statement.child(0).text() == name;
    });
}

// A bare word is meant as a word where the parameter's default is one, or where the name means nothing.
std::optional<Value> argument_value(const Argument& argument, const Syntax& definition, Scope& caller,
                                    Evaluator& evaluator) {
    if (argument.value.kind() != NodeKind::name) return evaluator.evaluate(argument.value, caller);
    const std::string_view name = argument.value.text();
    const Syntax otherwise = argument.parameter.child(1);
    const bool wants_word = otherwise.kind() == NodeKind::name && !defines(definition, otherwise.text());
    if (wants_word) return Word{std::string(name)};
    if (References* references = caller.references()) {
        if (auto own = references->own(name, argument.value, evaluator)) return own;
    }
    if (caller.find(name) == nullptr) return Word{std::string(name)};
    return evaluator.evaluate(argument.value, caller);
}

// The defaults of a definition before anything is given, to see of what kind each is. What cannot be
// evaluated without the arguments has no kind; that is no error.
class Defaults {
  public:
    Defaults(const DefinitionCall& call, std::vector<SizeRead>& reads, const Evaluator& evaluator)
        : evaluator_(unseen_, evaluator),
          references_(call.members, scope_, reads),
          scope_(nullptr, &references_) {
        for (const Syntax& statement : call.definition.find(NodeKind::block).children()) {
            define_name(statement, scope_, evaluator_, true);
        }
    }

    std::optional<Quantity> quantity(std::string_view name, Span at) {
        Definition* definition = scope_.find_here(name);
        if (definition == nullptr) return std::nullopt;
        const std::optional<Value> value = evaluator_.value_of(*definition, name, at);
        const auto* quantity = value ? std::get_if<Quantity>(&*value) : nullptr;
        return quantity == nullptr ? std::nullopt : std::optional<Quantity>(*quantity);
    }

  private:
    Diagnostics unseen_;
    Evaluator evaluator_;
    MemberReferences references_;
    Scope scope_;
};

// An argument of another kind than the default is a slip of the design, not of the definition.
bool fits_default(const GivenArgument& argument, Defaults& defaults, Evaluator& evaluator) {
    const auto* given = std::get_if<Quantity>(&argument.value);
    const std::string_view name = argument.parameter.child(0).text();
    if (given == nullptr || (given->value == 0 && given->is_number())) return true;
    const std::optional<Quantity> expected = defaults.quantity(name, argument.written.span());
    if (!expected || given->dimension == expected->dimension) return true;
    evaluator.report(diagnose(
        Code::dimension_mismatch, argument.written.span(),
        fmt::format("`{}` is {}, not {}", name, describe(Value(*expected)), describe(argument.value))));
    return false;
}

bool all_given(const DefinitionCall& call, Scope& scope, Evaluator& evaluator) {
    bool good = true;
    const std::string_view name = call.definition.child(0).text();
    for (const Syntax& parameter : parameters_of(call.definition)) {
        const Definition* definition = scope.find_here(parameter.child(0).text());
        const bool waiting = definition->state == Definition::State::waiting;
        if (!waiting || definition->expression.kind() != NodeKind::given) continue;
        evaluator.report(diagnose(Code::bad_argument, call.call.span(),
                                  fmt::format("`{}` needs `{}`", name, parameter.child(0).text()))
                             .hint(fmt::format("write `{}({} = ...)`", name, parameter.child(0).text())));
        good = false;
    }
    return good;
}

}  // namespace

std::optional<std::vector<GivenArgument>> given_arguments(const DefinitionCall& call, Evaluator& evaluator) {
    const std::optional<std::vector<Argument>> arguments = pair_arguments(call, evaluator);
    if (!arguments) return std::nullopt;
    std::vector<GivenArgument> result;
    for (const Argument& argument : *arguments) {
        std::optional<Value> value = argument_value(argument, call.definition, *call.scope, evaluator);
        if (value) result.push_back({argument.parameter, argument.value, std::move(*value)});
    }
    if (result.size() < arguments->size()) return std::nullopt;
    return result;
}

bool bind_arguments(const DefinitionCall& call, const std::vector<GivenArgument>& arguments, Scope& scope,
                    std::vector<SizeRead>& reads, Evaluator& evaluator) {
    bool good = true;
    std::optional<Defaults> defaults;
    for (const GivenArgument& argument : arguments) {
        if (!defaults) defaults.emplace(call, reads, evaluator);
        good = good && fits_default(argument, *defaults, evaluator);
        const Syntax name = argument.parameter.child(0);
        scope.replace(name.text(), {argument.written, call.scope, name.span(), true, Definition::State::done,
                                    argument.value});
    }
    return good && all_given(call, scope, evaluator);
}

Phrase::Word as_said(const Value& value) {
    if (const auto* quantity = std::get_if<Quantity>(&value)) return *quantity;
    if (const auto* word = std::get_if<Word>(&value)) return word->text;
    if (const auto* text = std::get_if<Text>(&value)) return text->text;
    if (const bool* yes = std::get_if<bool>(&value)) return *yes ? "yes" : "no";
    return "none";
}

namespace {

// A name as it is said: `side_apron` is the side apron.
std::string spoken(std::string name) {
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

class TextFiller {
  public:
    TextFiller(const Syntax& string, Scope& scope, const MemberReferences& members, Evaluator& evaluator)
        : string_(string), scope_(scope), members_(members), evaluator_(evaluator) {}

    FilledText fill() {
        const std::string text = unquoted(string_);
        std::size_t at = 0;
        while (at < text.size()) {
            const std::size_t open = text.find('{', at);
            const std::size_t close = open == std::string::npos ? open : text.find('}', open);
            if (close == std::string::npos) break;
            add(text.substr(at, open - at));
            if (!fill_one(text.substr(open + 1, close - open - 1))) return {text, {}};
            at = close + 1;
        }
        add(text.substr(at));
        return std::move(result_);
    }

  private:
    const Syntax& string_;
    Scope& scope_;
    const MemberReferences& members_;
    Evaluator& evaluator_;
    FilledText result_;

    void add(Phrase::Word word) {
        const auto* plain = std::get_if<std::string>(&word);
        if (plain == nullptr || !plain->empty()) result_.phrase.words.push_back(std::move(word));
    }

    bool fill_one(const std::string& inside) {
        const std::size_t dot = inside.find('.');
        if (const std::optional<std::size_t> member = members_.index(inside.substr(0, dot))) {
            if (dot == std::string::npos) {
                add(Phrase::NamedPart{inside, spoken(members_[*member].part)});
                return true;
            }
            const std::optional<Rational> size = members_.size(*member, inside.substr(dot + 1));
            if (size) add(Quantity::length(*size));
            return size || report_nothing(inside);
        }
        Definition* definition = scope_.find(inside);
        if (definition == nullptr) return report_nothing(inside);
        const std::optional<Value> value = evaluator_.value_of(*definition, inside, string_.span());
        if (value) add(as_said(*value));
        result_.values.insert(inside);
        return true;
    }

    bool report_nothing(const std::string& inside) {
        evaluator_.report(diagnose(Code::unknown_name, string_.span(),
                                   fmt::format("`{{{}}}` in this text names nothing", inside))
                              .hint("braces hold a parameter, a let, a member or a member's size"));
        return false;
    }
};

}  // namespace

FilledText fill_text(const Syntax& string, Scope& scope, const MemberReferences& members,
                     Evaluator& evaluator) {
    return TextFiller(string, scope, members, evaluator).fill();
}

}  // namespace rodwright
