#include <array>
#include <cassert>
#include <string_view>
#include <utility>

#include "grammar/events.hpp"

namespace rodwright {
namespace {

constexpr auto last_node_kind = static_cast<std::uint8_t>(EventKind::chain);

Operator operator_at(std::string_view text, const Event& event) {
    const std::string_view word = text.substr(event.begin, event.end - event.begin);
    constexpr std::array infix = {Operator::add,       Operator::subtract,      Operator::multiply,
                                  Operator::divide,    Operator::less,          Operator::less_equal,
                                  Operator::greater,   Operator::greater_equal, Operator::equal,
                                  Operator::not_equal, Operator::both,          Operator::either};
    for (const Operator op : infix) {
        if (operator_text(op) == word) return op;
    }
    assert(false && "the grammar reads no other operator");
    return Operator::none;
}

class Builder {
  public:
    Builder(const std::vector<Event>& events, std::string_view text) : events_(events), text_(text) {
        nodes_.reserve(events.size());
    }

    std::vector<Node> build() && {
        emit(0);
        return std::move(nodes_);
    }

  private:
    static constexpr std::uint32_t nothing = 0xffffffffU;

    // An operand with its signs before it and what follows it: events [first, last).
    struct Operand {
        std::uint32_t first = 0;
        std::uint32_t last = 0;
        std::uint32_t outermost = nothing;  // of the operators in `done` that begin with it
    };
    // An operator with the operands it reaches over.
    struct Reach {
        Operator op = Operator::none;
        std::uint32_t begin = 0;
        std::uint32_t first = 0;
        std::uint32_t last = 0;
        std::uint32_t within = nothing;  // the next operator inwards that begins with the same operand
    };
    struct Chain {
        std::vector<Operand> operands;
        std::vector<Reach> waiting;  // operators whose right side is still growing
        std::vector<Reach> done;     // inner ones before outer ones
        std::vector<Reach> values;   // what waiting operators have between them
    };

    std::uint32_t next_node() const { return static_cast<std::uint32_t>(nodes_.size()); }
    std::uint32_t open(NodeKind kind, Operator op, std::uint32_t begin) {
        nodes_.push_back({kind, op, begin, begin, 0});
        return next_node() - 1;
    }
    void close(std::uint32_t node, std::uint32_t end) {
        nodes_[node].end = end;
        nodes_[node].after = next_node();
    }

    void emit_children(std::uint32_t event) {
        for (std::uint32_t child = event + 1; child < events_[event].after; child = events_[child].after)
            emit(child);
    }

    void emit_as(NodeKind kind, std::uint32_t event) {
        const std::uint32_t node = open(kind, Operator::none, events_[event].begin);
        emit_children(event);
        close(node, events_[event].end);
    }

    void emit(std::uint32_t event) {
        const EventKind kind = events_[event].kind;
        if (kind == EventKind::chain) {
            emit_chain(event);
        } else if (kind == EventKind::bracketed) {
            emit_bracketed(event);
        } else {
            assert(static_cast<std::uint8_t>(kind) < last_node_kind);
            emit_as(static_cast<NodeKind>(kind), event);
        }
    }

    // (a) adds no node; (a, b) is a point.
    void emit_bracketed(std::uint32_t event) {
        const bool single = events_[event + 1].after == events_[event].after;
        single ? emit(event + 1) : emit_as(NodeKind::point, event);
    }

    bool is_suffix(std::uint32_t event) const {
        const EventKind kind = events_[event].kind;
        return kind == EventKind::member || kind == EventKind::copy || kind == EventKind::call_arguments;
    }

    void emit_chain(std::uint32_t event) {
        const std::uint32_t only = event + 1;
        if (events_[only].after == events_[event].after) return emit(only);
        Chain chain;
        for (std::uint32_t at = only; at < events_[event].after;)
            at = read_item(chain, at, events_[event].after);
        while (!chain.waiting.empty()) reduce(chain);
        emit_operands(chain);
    }

    // Takes an operator or an operand; returns the event after it.
    std::uint32_t read_item(Chain& chain, std::uint32_t at, std::uint32_t end) {
        const Event& event = events_[at];
        if (event.kind == EventKind::not_sign) {
            chain.waiting.push_back({Operator::invert, event.begin, 0, 0, nothing});
        } else if (event.kind == EventKind::infix) {
            const Operator op = operator_at(text_, event);
            while (!chain.waiting.empty() && precedence(chain.waiting.back().op) >= precedence(op))
                reduce(chain);
            chain.waiting.push_back({op, event.begin, 0, 0, nothing});
        } else {
            return read_operand(chain, at, end);
        }
        return event.after;
    }

    std::uint32_t read_operand(Chain& chain, std::uint32_t at, std::uint32_t end) {
        const std::uint32_t first = at;
        while (events_[at].kind == EventKind::minus_sign) at = events_[at].after;
        at = events_[at].after;
        while (at < end && is_suffix(at)) at = events_[at].after;
        const auto index = static_cast<std::uint32_t>(chain.operands.size());
        chain.operands.push_back({first, at, nothing});
        chain.values.push_back({Operator::none, events_[first].begin, index, index, nothing});
        return at;
    }

    // Gives the last waiting operator the values next to it.
    static void reduce(Chain& chain) {
        Reach made = chain.waiting.back();
        chain.waiting.pop_back();
        const Reach right = chain.values.back();
        made.first = right.first;
        made.last = right.last;
        if (made.op != Operator::invert) {
            chain.values.pop_back();
            made.begin = chain.values.back().begin;
            made.first = chain.values.back().first;
        }
        made.within = std::exchange(chain.operands[made.first].outermost,
                                    static_cast<std::uint32_t>(chain.done.size()));
        chain.values.back() = made;
        chain.done.push_back(made);
    }

    // Before each operand the operators that begin with it, outer ones first; a chain of any length needs no
    // recursion here.
    void emit_operands(const Chain& chain) {
        std::vector<std::pair<std::uint32_t, std::uint32_t>> unfinished;  // node, its last operand
        for (std::uint32_t i = 0; i < chain.operands.size(); ++i) {
            for (std::uint32_t k = chain.operands[i].outermost; k != nothing; k = chain.done[k].within) {
                const Reach& reach = chain.done[k];
                const NodeKind kind = reach.op == Operator::invert ? NodeKind::unary : NodeKind::binary;
                unfinished.emplace_back(open(kind, reach.op, reach.begin), reach.last);
            }
            const std::uint32_t end = emit_operand(chain.operands[i]);
            for (; !unfinished.empty() && unfinished.back().second == i; unfinished.pop_back()) {
                close(unfinished.back().first, end);
            }
        }
    }

    // Returns where the operand ends in the text.
    std::uint32_t emit_operand(const Operand& operand) {
        const std::uint32_t signs = next_node();
        std::uint32_t at = operand.first;
        for (; events_[at].kind == EventKind::minus_sign; at = events_[at].after) {
            open(NodeKind::unary, Operator::negate, events_[at].begin);
        }
        const std::uint32_t signs_end = next_node();
        const std::uint32_t end = emit_suffixed(at, operand.last);
        for (std::uint32_t sign = signs; sign < signs_end; ++sign) close(sign, end);
        return end;
    }

    // base.a[b](c): the last suffix is the outermost node. Returns where it ends in the text.
    std::uint32_t emit_suffixed(std::uint32_t base, std::uint32_t last) {
        const std::uint32_t outermost = next_node();
        std::vector<std::uint32_t> suffixes;
        for (std::uint32_t at = events_[base].after; at < last; at = events_[at].after)
            suffixes.push_back(at);
        for (std::size_t i = suffixes.size(); i-- > 0;) {
            open(suffix_kind(suffixes[i]), Operator::none, events_[base].begin);
        }
        emit(base);
        std::uint32_t node = outermost + static_cast<std::uint32_t>(suffixes.size());
        std::uint32_t end = events_[base].end;
        for (const std::uint32_t suffix : suffixes) {
            emit_children(suffix);
            end = events_[suffix].end;
            close(--node, end);
        }
        return end;
    }

    NodeKind suffix_kind(std::uint32_t event) const {
        if (events_[event].kind == EventKind::call_arguments) return NodeKind::call;
        return static_cast<NodeKind>(events_[event].kind);
    }

    const std::vector<Event>& events_;
    std::string_view text_;
    std::vector<Node> nodes_;
};

}  // namespace

std::vector<Node> build_nodes(const std::vector<Event>& events, std::string_view text) {
    return Builder(events, text).build();
}

std::size_t first_too_deep(const std::vector<Node>& nodes, std::size_t limit) {
    std::vector<std::uint32_t> ends;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        while (!ends.empty() && ends.back() <= i) ends.pop_back();
        if (ends.size() > limit) return i;
        ends.push_back(nodes[i].after);
    }
    return nodes.size();
}

}  // namespace rodwright
