#include "compiler/graph/definition_use.hpp"

#include <fmt/format.h>

#include "compiler/evaluate/active.hpp"
#include "compiler/graph/definition_bodies.hpp"
#include "compiler/graph/definition_memo.hpp"
#include "compiler/graph/definition_scope.hpp"
#include "compiler/graph/definition_steps.hpp"

namespace rodwright {

namespace {

class DefinitionUse {
  public:
    DefinitionUse(const DefinitionCall& call, const LengthStyle& style, Evaluator& evaluator)
        : call_(call),
          style_(style),
          evaluator_(evaluator),
          references_(call.members, scope_, reads_),
          scope_(nullptr, &references_) {}

    const std::vector<SizeRead>& reads() const { return reads_; }

    std::optional<DefinitionResult> run(const std::vector<GivenArgument>& arguments) {
        const std::vector<Syntax> written = call_.definition.find(NodeKind::block).children();
        std::vector<Syntax> rest;
        for (const Syntax& statement : written) {
            if (!define_name(statement, scope_, evaluator_, true)) rest.push_back(statement);
        }
        if (!bind_arguments(call_, arguments, scope_, reads_, evaluator_)) return std::nullopt;
        result_.work.definition = call_.definition.child(0).text();
        result_.work.defined_at = call_.definition.child(0).span();
        for (const Syntax& statement : active_statements(rest, scope_, evaluator_, true)) one(statement);
        numbers(written);
        return std::move(result_);
    }

  private:
    const DefinitionCall& call_;
    const LengthStyle& style_;
    Evaluator& evaluator_;
    std::vector<SizeRead> reads_;
    MemberReferences references_;
    Scope scope_;
    DefinitionResult result_;
    std::set<std::string> named_;  // in steps, tools and supplies

    void one(const Syntax& statement) {
        switch (statement.kind()) {
            case NodeKind::doc:
                result_.work.doc = unquoted(statement.child(0));
                break;
            case NodeKind::extend:
                extend(statement);
                break;
            case NodeKind::trim:
                bodies(statement, FeatureOp::trim);
                break;
            case NodeKind::leave:
                bodies(statement, FeatureOp::leave);
                break;
            case NodeKind::remove:
                bodies(statement, FeatureOp::remove);
                break;
            case NodeKind::blend:
                ease(statement, FeatureOp::blend);
                break;
            case NodeKind::bevel:
                ease(statement, FeatureOp::bevel);
                break;
            case NodeKind::slides:
                result_.slides = direction(statement.child(0), form(), scope_, evaluator_);
                break;
            case NodeKind::lets:
                lets(statement);
                break;
            case NodeKind::glue:
                for (const Syntax& word : statement.children()) result_.glue.emplace_back(word.text());
                break;
            case NodeKind::hold:
                hold(statement);
                break;
            case NodeKind::check:
                check(statement);
                break;
            case NodeKind::needs:
                result_.work.needs.push_back(tool_need(statement, text_maker(), named_));
                break;
            case NodeKind::supply:
                if (auto supplied = supply(statement, text_maker(), named_))
                    result_.work.supplies.push_back(*supplied);
                break;
            case NodeKind::step:
                result_.work.steps.push_back(step(statement, text_maker(), named_));
                break;
            case NodeKind::require:
                break;
            default:
                evaluator_.report(
                    diagnose(Code::wrong_statement, statement.span(),
                             fmt::format("`{}` has no meaning in a {}", kind_word(statement.kind()),
                                         kind_word(call_.definition.kind()))));
                break;
        }
    }

    MemberForm form() const { return call_.members.front().form; }
    TextMaker text_maker() { return {scope_, references_, evaluator_}; }

    std::optional<std::size_t> member(const Syntax& name) {
        const std::optional<std::size_t> found = references_.index(name.text());
        if (!found) {
            evaluator_.report(diagnose(Code::unknown_name, name.span(),
                                       fmt::format("`{}` is no member here", name.text())));
        }
        return found;
    }

    void extend(const Syntax& statement) {
        const std::optional<std::size_t> which = member(statement.child(0));
        const std::optional<Rational> by = evaluator_.length(statement.child(1), scope_);
        if (which && by) result_.extends.push_back({*which, *by});
    }

    void bodies(const Syntax& statement, FeatureOp op) {
        const std::optional<std::size_t> which = member(statement.child(0));
        if (!which) return;
        for (Body& body : definition_bodies(statement.child(1), form(), scope_, evaluator_)) {
            result_.features.push_back({*which, op, std::move(body), 0});
        }
    }

    void ease(const Syntax& statement, FeatureOp op) {
        const std::optional<std::size_t> which = member(statement.child(0));
        const std::optional<Rational> size = evaluator_.length(statement.child(1), scope_);
        if (!which || !size) return;
        if (*size <= 0) {
            evaluator_.report(
                diagnose(Code::bad_feature, statement.child(1).span(),
                         fmt::format("an edge cannot be eased by {}", format_length(*size, style_))));
            return;
        }
        result_.features.push_back({*which, op, {}, *size});
    }

    void lets(const Syntax& statement) {
        const std::optional<std::size_t> which = member(statement.child(0));
        const std::optional<Direction> way = direction(statement.child(1), form(), scope_, evaluator_);
        const Syntax by = statement.find(NodeKind::by);
        const std::optional<Rational> room =
            by ? evaluator_.length(by.child(0), scope_) : std::optional<Rational>();
        if (!which || !way || (by && !room)) return;
        if (room && *room < 0) {
            evaluator_.report(diagnose(Code::bad_argument, by.child(0).span(),
                                       fmt::format("no part moves by {}", format_length(*room, style_))));
            return;
        }
        result_.lets.push_back({*which, *way, room});
        if (statement.find(NodeKind::either_way)) result_.lets.push_back({*which, -*way, room});
    }

    void hold(const Syntax& statement) {
        const std::optional<FastenerForm> form_held = fastener_form(statement.child(0), evaluator_);
        if (!form_held) return;
        for (Body& body : definition_bodies(statement.child(1), form(), scope_, evaluator_)) {
            if (body.form != BodyForm::cylinder || body.frame.w.axis != Axis::tall) {
                evaluator_.report(diagnose(Code::bad_feature, statement.child(1).span(),
                                           "a fastener is a cylinder that runs inward")
                                      .hint("as in `hold screw cylinder(4mm, 30mm)`, without `along`"));
                return;
            }
            result_.fasteners.push_back({*form_held, std::move(body)});
        }
    }

    void check(const Syntax& statement) {
        const std::optional<bool> holds = evaluator_.condition(statement.child(0), scope_);
        if (!holds || *holds) return;
        const Code code = statement.child(1).text() == "error" ? Code::joint_refused : Code::joint_check;
        const Phrase message = text_maker().fill(statement.child(2)).phrase;
        Diagnostic diagnostic = diagnose(code, call_.call.span(), read_out(message, style_));
        diagnostic.trace.push_back(
            {statement.child(0).span(), fmt::format("checked by `{}`", result_.work.definition)});
        result_.checks.push_back(std::move(diagnostic));
    }

    // Parameters first, then what is derived from them, as written. What no step or tool names is of no use
    // at the bench, but joints that differ in it are not alike.
    void numbers(const std::vector<Syntax>& written) {
        for (const bool parameters : {true, false}) {
            for (const Syntax& statement : written) {
                const bool let = statement.kind() == NodeKind::let;
                if ((!let && statement.kind() != NodeKind::equation) || let == parameters) continue;
                const std::string name(statement.child(0).text());
                Definition* definition = scope_.find_here(name);
                if (definition == nullptr) continue;
                const auto value = evaluator_.value_of(*definition, name, statement.child(0).span());
                if (!value) continue;
                const bool said = parameters || named_.contains(name);
                number(said ? result_.work.numbers : result_.unsaid, name, *value);
            }
        }
    }

    void number(std::vector<std::pair<std::string, Quantity>>& numbers, const std::string& name,
                const Value& value) {
        if (const auto* quantity = std::get_if<Quantity>(&value)) {
            numbers.emplace_back(name, *quantity);
        } else if (const auto* word = std::get_if<Word>(&value)) {
            result_.work.words.emplace_back(name, word->text);
        } else if (std::holds_alternative<Nothing>(value)) {
            result_.work.words.emplace_back(name, "none");
        }
    }
};

}  // namespace

// Errors found inside the definition need the way that led there.
static void report_with_trace(const DefinitionCall& call, const Diagnostics& found, Evaluator& evaluator) {
    for (Diagnostic diagnostic : found.list()) {
        if (diagnostic.primary.file == call.definition.tree->file() &&
            diagnostic.primary.file != call.call.span().file) {
            diagnostic.trace.push_back(
                {call.call.span(), fmt::format("in `{}`, used here", call.definition.child(0).text())});
        }
        evaluator.report(std::move(diagnostic));
    }
}

static std::shared_ptr<const DefinitionResult> evaluate_use(const DefinitionCall& call,
                                                            const LengthStyle& style, Evaluator& evaluator,
                                                            DefinitionMemo& memo) {
    std::optional<std::vector<GivenArgument>> arguments = given_arguments(call, evaluator);
    if (!arguments) return nullptr;
    if (auto known = memo.find(call, *arguments)) return known;
    const std::size_t steps =
        call.definition.node_count() + call.definition.text().size() / text_bytes_per_step;
    if (!evaluator.spend(steps, call.call.span())) return nullptr;
    DefinitionUse use(call, style, evaluator);
    std::optional<DefinitionResult> made = use.run(*arguments);
    if (!made) return nullptr;
    auto result = std::make_shared<const DefinitionResult>(std::move(*made));
    // What was reported has to be reported each time.
    if (evaluator.diagnostics().list().empty()) memo.keep(call, std::move(*arguments), use.reads(), result);
    return result;
}

std::shared_ptr<const DefinitionResult> use_definition(const DefinitionCall& call, const LengthStyle& style,
                                                       Evaluator& evaluator, DefinitionMemo& memo) {
    Diagnostics found;
    Evaluator inner(found, evaluator);
    auto result = evaluate_use(call, style, inner, memo);
    report_with_trace(call, found, evaluator);
    return evaluator.spend(0, call.call.span()) ? result : nullptr;
}

}  // namespace rodwright
