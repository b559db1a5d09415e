#include "compiler/graph/worked_out.hpp"

namespace rodwright {

namespace {

constexpr std::size_t most_words = 40;  // longer sums explain nothing

class SumWriter {
  public:
    explicit SumWriter(const TextMaker& texts) : texts_(texts), evaluator_(unseen_, texts.evaluator) {}

    Phrase write(const Syntax& expression) {
        fill(expression);
        if (!said_all_ || !has_arithmetic_ || sum_.words.size() > most_words) return {};
        return std::move(sum_);
    }

  private:
    void say(Phrase::Word word) { sum_.words.push_back(std::move(word)); }

    void value(const Syntax& expression) {
        const std::optional<Value> value = evaluator_.evaluate(expression, texts_.scope);
        if (value) say(as_said(*value));
        said_all_ = said_all_ && value.has_value();
    }

    // What stands between the parts of an expression is written as it is.
    void parts(const Syntax& expression, std::size_t skipped = 0) {
        const Span whole = expression.span();
        const std::string_view text = expression.text();
        std::uint32_t written = 0;
        for (const Syntax& child : expression.children()) {
            if (skipped > 0) {
                --skipped;
                continue;
            }
            const Span span = child.span();
            say(std::string(text.substr(written, span.begin - whole.begin - written)));
            fill(child);
            written = span.end - whole.begin;
        }
        say(std::string(text.substr(written)));
    }

    void fill(const Syntax& expression) {
        switch (expression.kind()) {
            case NodeKind::name:
            case NodeKind::member:
            case NodeKind::number:
                return value(expression);
            // Only the branch that is taken.
            case NodeKind::choice: {
                const std::optional<bool> first = evaluator_.condition(expression.child(0), texts_.scope);
                if (first) fill(expression.child(*first ? 1 : 2));
                said_all_ = said_all_ && first.has_value();
                return;
            }
            case NodeKind::call:
                has_arithmetic_ = true;
                return parts(expression, 1);
            case NodeKind::binary:
            case NodeKind::unary:
                has_arithmetic_ = true;
                return parts(expression);
            case NodeKind::argument:
                return parts(expression);
            default:
                said_all_ = false;
        }
    }

    const TextMaker& texts_;
    Diagnostics unseen_;
    Evaluator evaluator_;
    Phrase sum_;
    bool said_all_ = true;
    bool has_arithmetic_ = false;
};

}  // namespace

Phrase worked_out(const Syntax& expression, const TextMaker& texts) {
    if (expression.kind() != NodeKind::name) return SumWriter(texts).write(expression);
    const Definition* definition = texts.scope.find(expression.text());
    // What a join gives is the maker's own, and is looked up in the design, not here.
    if (definition == nullptr || definition->scope != &texts.scope) return {};
    return SumWriter(texts).write(definition->expression);
}

}  // namespace rodwright
