#include "grammar/printer.hpp"

namespace rodwright {
namespace {

// How a kind of node is written. `$` is the next child, `*` all that are left with blanks between, `,` and
// `|` all that are left with that between, `&` all that are left as operands; `<...>` only if a child is
// left; `~` a blank that may become a line end.
std::string_view pattern(NodeKind kind) {
    switch (kind) {
        case NodeKind::use:
            return "use $";
        case NodeKind::piece:
            return "piece $";
        case NodeKind::joint:
            return "joint $(,)";
        case NodeKind::shape:
            return "shape $(,)";
        case NodeKind::assembly:
            return "assembly $<(,)>";
        case NodeKind::member_decl:
            return "$: $";
        case NodeKind::parameter:
            return "$< = $>";
        case NodeKind::unit:
            return "unit *";
        case NodeKind::param:
            return "param $ = *";
        case NodeKind::from:
            return "from $";
        case NodeKind::to:
            return "to $";
        case NodeKind::let:
            return "let $ = $";
        case NodeKind::equation:
            return "$ = $";
        case NodeKind::wood:
            return "wood $ = *";
        case NodeKind::part:
            return "part *";
        case NodeKind::count:
            return "[$]";
        case NodeKind::of:
            return "of $";
        case NodeKind::handed:
            return "handed *";
        case NodeKind::space:
            return "space $ along $ from $ to $";
        case NodeKind::join:
            return "join $ to $ with $";
        case NodeKind::fasten:
            return "fasten $ to $ with $";
        case NodeKind::load:
            return "load $ on $< at $>";
        case NodeKind::used_as:
            return "use *";
        case NodeKind::people:
            return "for $";
        case NodeKind::upon:
            return "on $";
        case NodeKind::require:
            return "require *";
        case NodeKind::match:
            return "match $ $";
        case NodeKind::from_one_board:
            return "from one board";
        case NodeKind::in_sequence:
            return "in sequence";
        case NodeKind::as_book:
            return "as book";
        case NodeKind::finish:
            return "finish $< coats $>";
        case NodeKind::place:
            return "place $ as $<(,)>";
        case NodeKind::variant:
            return "variant $";
        case NodeKind::made:
            return "made $";
        case NodeKind::done:
            return "done ,< $>";
        case NodeKind::take:
            return "take , from the work< $>";
        case NodeKind::over:
            return "over $";
        case NodeKind::accept:
            return "accept *";
        case NodeKind::opens:
            return "opens by $";
        case NodeKind::climate:
            return "climate $ to $ at $< $>";
        case NodeKind::made_at:
            return "made at $";
        case NodeKind::if_statement:
            return "if $";
        case NodeKind::grain:
            return "grain $";
        case NodeKind::thick:
            return "thick $";
        case NodeKind::rake:
            return "rake *";
        case NodeKind::splay:
            return "splay *";
        case NodeKind::about:
            return "at $";
        case NodeKind::glued:
            return "glued from *";
        case NodeKind::each:
            return "each $ to $";
        case NodeKind::show:
            return "show $ face";
        case NodeKind::apply:
            return "$ on ,";
        case NodeKind::selector:
            return "*";
        case NodeKind::doc:
            return "$";
        case NodeKind::extend:
            return "extend $ by $";
        case NodeKind::leave:
            return "leave $ $";
        case NodeKind::remove:
            return "remove $ $";
        case NodeKind::trim:
            return "trim $ $";
        case NodeKind::blend:
            return "blend $ by $";
        case NodeKind::bevel:
            return "bevel $ by $";
        case NodeKind::body:
            return "*";
        case NodeKind::at:
            return "at $";
        case NodeKind::along:
            return "along $";
        case NodeKind::repeat:
            return "repeat $ every $ along $";
        case NodeKind::slides:
            return "slides along $";
        case NodeKind::lets:
            return "lets $ move along *";
        case NodeKind::by:
            return "by $";
        case NodeKind::either_way:
            return "either way";
        case NodeKind::glue:
            return "glue *";
        case NodeKind::hold:
            return "hold $ $";
        case NodeKind::check:
            return "check $~else $ $";
        case NodeKind::needs:
            return "needs |";
        case NodeKind::tool:
            return "$&";
        case NodeKind::supply:
            return "supply *";
        case NodeKind::step:
            return "step *";
        case NodeKind::of_member:
            return ",";
        case NodeKind::using_tool:
            return "using $< with $>";
        case NodeKind::setting:
            return "$ = $";
        case NodeKind::after:
            return "after ,< $>";
        case NodeKind::because:
            return "because $";
        case NodeKind::caution:
            return "caution $";
        default:
            return {};
    }
}

class Writer {
  public:
    Writer(Phrase& out, const Tree& tree, NodeId node) : out_(out), tree_(tree), parent_(tree.kind(node)) {
        for (const NodeId child : tree.children(node)) {
            if (tree.kind(child) == NodeKind::block) break;
            children_.push_back(child);
        }
    }

    void write(std::string_view text) {
        bool skipping = false;
        for (const char sign : text) {
            if (sign == '<') {
                skipping = done();
            } else if (sign == '>') {
                skipping = false;
            } else if (!skipping) {
                write_sign(sign);
            }
        }
    }

  private:
    bool done() const { return next_ == children_.size(); }
    NodeKind next_kind() const { return tree_.kind(children_[next_]); }

    void write_sign(char sign) {
        switch (sign) {
            case '$':
                return write_child();
            case '*':
                return write_row();
            case ',':
                return write_list(",");
            case '|':
                return write_list(" |");
            case '&':
                return write_operands();
            case '~':
                out_.soft_break();
                return;
            default:
                out_ << std::string_view(&sign, 1);
        }
    }

    void write_child();

    void write_list(std::string_view between) {
        for (bool first = true; !done() && !follows_list(); first = false) {
            if (!first) (out_ << between).soft_break();
            write_child();
        }
    }

    bool follows_list() const {
        const NodeKind kind = next_kind();
        return kind == NodeKind::because || kind == NodeKind::upon || kind == NodeKind::over;
    }

    void write_operands() {
        while (!done()) {
            if (next_kind() == NodeKind::word) {
                out_ << " ";
                write_child();
            } else {
                print_operand(out_, tree_, children_[next_++]);
            }
        }
    }

    void write_row() {
        for (bool first = true; !done(); first = false) {
            const bool setting = next_kind() == NodeKind::setting;
            const bool after_setting = next_ > 0 && tree_.kind(children_[next_ - 1]) == NodeKind::setting;
            if (setting && after_setting) {
                (out_ << ",").soft_break();
            } else if (!first && begins_clause()) {
                (out_ << (after_setting ? " }" : "")).soft_break();
            } else if (!first) {
                out_ << (after_setting ? " } " : setting ? " { " : row_gap());
            }
            write_child();
        }
        if (!children_.empty() && tree_.kind(children_.back()) == NodeKind::setting) out_ << " }";
    }

    // A clause before which a step may go on in the next line.
    bool begins_clause() const {
        const NodeKind kind = next_kind();
        return kind == NodeKind::using_tool || kind == NodeKind::after || kind == NodeKind::caution ||
               kind == NodeKind::repeat || (parent_ == NodeKind::step && kind == NodeKind::word);
    }

    std::string_view row_gap() const {
        if (next_kind() == NodeKind::count) return "";
        return next_kind() == NodeKind::handed ? ", " : " ";
    }

    // A joint or a shape without arguments is written without its parentheses.
    bool is_plain_call(NodeId node) const {
        const bool of_joint =
            parent_ == NodeKind::join || parent_ == NodeKind::fasten || parent_ == NodeKind::apply;
        return of_joint && tree_.kind(node) == NodeKind::call && tree_.child_count(node) == 1;
    }

    Phrase& out_;
    const Tree& tree_;
    NodeKind parent_;
    std::vector<NodeId> children_;
    std::size_t next_ = 0;
};

void Writer::write_child() {
    const NodeId child = children_[next_++];
    const std::string_view form = pattern(tree_.kind(child));
    if (is_plain_call(child)) {
        out_ << tree_.text(tree_.child(child, 0));
    } else if (form.empty()) {
        print_expression(out_, tree_, child);
    } else {
        Writer(out_, tree_, child).write(form);
    }
}

}  // namespace

Phrase print_head(const Tree& tree, NodeId statement) {
    Phrase out;
    const std::string_view form = pattern(tree.kind(statement));
    if (form.empty()) {
        out << tree.text(statement);
    } else {
        Writer(out, tree, statement).write(form);
    }
    return out;
}

}  // namespace rodwright
