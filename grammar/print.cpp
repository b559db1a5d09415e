#include "grammar/print.hpp"

#include <algorithm>
#include <optional>

#include "grammar/printer.hpp"

namespace rodwright {
namespace {

constexpr std::size_t line_width = 100;
constexpr std::size_t indent_width = 4;

struct Line {
    std::size_t indent = 0;
    std::string text;
    std::string comment;  // behind the text

    std::size_t end() const { return indent + width(text); }
};

std::size_t line_ends(std::string_view text) {
    return static_cast<std::size_t>(std::ranges::count(text, '\n'));
}

std::vector<NodeId> blocks_of(const Tree& tree, NodeId statement) {
    std::vector<NodeId> blocks;
    for (const NodeId child : tree.children(statement)) {
        if (tree.kind(child) == NodeKind::block) blocks.push_back(child);
    }
    return blocks;
}

// A whole statement in one line, blocks and all, if it stood in one line and still fits.
std::optional<std::string> one_line(const Tree& tree, NodeId statement);

std::optional<std::string> one_line_block(const Tree& tree, NodeId block) {
    const std::string_view written = tree.text(block);
    // What fits has no more bytes than this, so a long block need not be tried at every level.
    if (written.size() > 4 * line_width || line_ends(written) > 0) return std::nullopt;
    std::string text;
    for (const NodeId child : tree.children(block)) {
        const std::optional<std::string> line = one_line(tree, child);
        if (!line) return std::nullopt;
        text += (text.empty() ? " " : "; ") + *line;
    }
    return "{" + text + (text.empty() ? "}" : " }");
}

std::optional<std::string> one_line(const Tree& tree, NodeId statement) {
    std::string text = print_head(tree, statement).text;
    std::string_view between = " ";
    for (const NodeId child : tree.children(statement)) {
        const bool block = tree.kind(child) == NodeKind::block;
        if (!block && tree.kind(child) != NodeKind::if_statement) continue;
        const std::optional<std::string> inner = block ? one_line_block(tree, child) : one_line(tree, child);
        if (!inner) return std::nullopt;
        text.append(between).append(*inner);
        between = " else ";
    }
    if (width(text) > line_width) return std::nullopt;
    return text;
}

class Layout {
  public:
    explicit Layout(const Tree& tree) : tree_(tree) {}

    std::string print() && {
        if (!tree_.empty()) {
            statements(tree_.root(), 0);
            comments_before(tree_.source().size(), 0);
        }
        align_comments();
        return text();
    }

  private:
    std::string_view source(std::size_t from, std::size_t to) const {
        return tree_.source().substr(from, std::max(from, to) - from);
    }
    bool same_line(std::size_t from, std::size_t to) const { return line_ends(source(from, to)) == 0; }
    bool comment_left_before(std::size_t end) const {
        return next_comment_ < tree_.comments().size() && tree_.comments()[next_comment_].begin < end;
    }
    std::string take_comment() {
        const Comment& comment = tree_.comments()[next_comment_++];
        std::string text(source(comment.begin, comment.end));
        text.erase(text.find_last_not_of(" \t\r") + 1);
        return text;
    }

    // A blank line where there was one or more, but not at the beginning of a block.
    void keep_blank_line(std::size_t begin) {
        if (!fresh_ && line_ends(source(last_, begin)) > 1) lines_.push_back({});
        fresh_ = false;
    }

    void comments_before(std::size_t end, std::size_t indent) {
        while (comment_left_before(end)) {
            const Comment comment = tree_.comments()[next_comment_];
            keep_blank_line(comment.begin);
            lines_.push_back({indent, take_comment(), {}});
            last_ = comment.end;
        }
    }

    // Comments within a statement, outside its blocks, come before it.
    void lift_comments(NodeId statement, std::size_t indent) {
        const std::vector<NodeId> blocks = blocks_of(tree_, statement);
        const std::size_t end = blocks.empty() ? tree_[statement].end : tree_[blocks.front()].begin;
        while (comment_left_before(end)) lines_.push_back({indent, take_comment(), {}});
    }

    void comment_behind(std::size_t end, std::size_t before) {
        if (!comment_left_before(before)) return;
        const Comment comment = tree_.comments()[next_comment_];
        if (comment.begin < end || !same_line(end, comment.begin)) return;
        lines_.back().comment = take_comment();
        last_ = comment.end;
    }

    void statements(NodeId parent, std::size_t indent) {
        const std::size_t end = tree_[parent].end;
        joinable_ = false;
        for (const NodeId child : tree_.children(parent)) {
            comments_before(tree_[child].begin, indent);
            statement(child, indent);
            last_ = tree_[child].end;
            const std::uint32_t next = tree_[child].after;
            comment_behind(tree_[child].end, next < tree_[parent].after ? tree_.nodes()[next].begin : end);
        }
    }

    void statement(NodeId node, std::size_t indent) {
        const std::size_t begin = tree_[node].begin;
        const bool commented = comment_left_before(tree_[node].end);
        const std::optional<std::string> line = commented ? std::nullopt : one_line(tree_, node);
        if (line && joinable_ && same_line(last_, begin) &&
            lines_.back().end() + 2 + width(*line) <= line_width) {
            lines_.back().text += "; " + *line;
            return;
        }
        keep_blank_line(begin);
        lift_comments(node, indent);
        joinable_ = line && indent + width(*line) <= line_width;
        if (joinable_) {
            lines_.push_back({indent, *line, {}});
        } else {
            long_statement(node, indent);
        }
    }

    void long_statement(NodeId node, std::size_t indent) {
        if (blocks_of(tree_, node).empty()) return wrap(print_head(tree_, node), indent);
        opened(node, "", indent);
        for (NodeId other = tree_.find(node, NodeKind::if_statement); other != NodeId::none;
             other = tree_.find(other, NodeKind::if_statement)) {
            lines_.pop_back();
            opened(other, "} else ", indent);
        }
        joinable_ = false;
    }

    // A statement with a block, and the block behind its `else`.
    void opened(NodeId node, std::string_view before, std::size_t indent) {
        Phrase head = print_head(tree_, node);
        head.text.insert(0, before);
        for (std::size_t& at : head.breaks) at += before.size();
        wrap(head << " {", indent);
        const std::vector<NodeId> blocks = blocks_of(tree_, node);
        block(blocks.front(), indent);
        if (blocks.size() == 1) return;
        lines_.back().text += " else {";
        block(blocks[1], indent);
    }

    // What stands behind the `{` that was just written, and the `}`.
    void block(NodeId node, std::size_t indent) {
        const NodeId first = tree_.child(node, 0);
        const std::size_t first_begin = first == NodeId::none ? tree_[node].end : tree_[first].begin;
        comment_behind(tree_[node].begin, first_begin);
        fresh_ = true;
        statements(node, indent + indent_width);
        comments_before(tree_[node].end, indent + indent_width);
        lines_.push_back({indent, "}", {}});
        last_ = tree_[node].end;
        fresh_ = false;
    }

    // Breaks a long line where the language lets it go on in the next.
    void wrap(const Phrase& phrase, std::size_t indent) {
        std::size_t begin = 0;
        std::size_t at = indent;
        for (std::size_t i = 0; i < phrase.breaks.size(); ++i) {
            const std::size_t next = i + 1 < phrase.breaks.size() ? phrase.breaks[i + 1] : phrase.text.size();
            const std::string_view upto = std::string_view(phrase.text).substr(begin, next - begin);
            if (at + width(upto) <= line_width || phrase.breaks[i] <= begin) continue;
            lines_.push_back({at, phrase.text.substr(begin, phrase.breaks[i] - begin - 1), {}});
            begin = phrase.breaks[i];
            at = indent + 2 * indent_width;
        }
        lines_.push_back({at, phrase.text.substr(begin), {}});
    }

    // Comments behind lines that follow one another stand in one column.
    void align_comments() {
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            std::size_t end = i;
            std::size_t column = 0;
            while (end < lines_.size() && !lines_[end].comment.empty() &&
                   lines_[end].indent == lines_[i].indent) {
                column = std::max(column, lines_[end++].end());
            }
            for (std::size_t k = i; k < end; ++k) lines_[k].text.append(column + 2 - lines_[k].end(), ' ');
            if (end > i) i = end - 1;
        }
    }

    std::string text() const {
        std::string out;
        for (const Line& line : lines_) {
            if (!line.text.empty()) out.append(line.indent, ' ');
            out.append(line.text).append(line.comment).append("\n");
        }
        return out;
    }

    const Tree& tree_;
    std::vector<Line> lines_;
    std::size_t next_comment_ = 0;
    std::size_t last_ = 0;   // where the last statement or comment that was written ends in the source
    bool fresh_ = true;      // nothing was written yet in this block
    bool joinable_ = false;  // the last line may take another statement behind a `;`
};

}  // namespace

std::size_t width(std::string_view text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string print(const Tree& tree) {
    return Layout(tree).print();
}

}  // namespace rodwright
