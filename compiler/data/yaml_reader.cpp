#include "compiler/data/yaml_reader.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <set>
#include <sstream>

#include "compiler/diagnostics/utf8.hpp"
#include "compiler/limits.hpp"

namespace rodwright {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

struct Refused {
    Diagnostic diagnostic;
};

// Builds the tree while the library parses, so that a limit stops the parser instead of being found
// afterwards.
class TreeBuilder : public YAML::EventHandler {
  public:
    TreeBuilder(FileId file, std::string_view text)
        : file_(file),
          text_(text),
          skipped_(text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0) {}

    YamlNode take() { return std::move(root_); }
    Span span_at(const YAML::Mark& mark, std::size_t length) const;

    void OnDocumentStart(const YAML::Mark&) override {}
    void OnDocumentEnd() override {}
    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override;
    void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override;
    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  const std::string& value) override;
    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value) override {
        start(YamlKind::list, mark, tag, anchor);
    }
    void OnSequenceEnd() override { finish(); }
    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value) override {
        start(YamlKind::map, mark, tag, anchor);
    }
    void OnMapEnd() override { finish(); }

  private:
    struct Open {
        YamlNode node;
        bool has_key = false;  // of a map: the next node is the value of this key
        std::string key;
        Span key_span;
        std::set<std::string> keys;
    };

    [[noreturn]] static void refuse(Code code, Span span, std::string message) {
        throw Refused{diagnose(code, span, std::move(message))};
    }
    bool wants_key() const {
        return !open_.empty() && open_.back().node.kind == YamlKind::map && !open_.back().has_key;
    }
    void count(Span span);
    void check_plain(Span span, const std::string& tag, YAML::anchor_t anchor) const;
    void start(YamlKind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor);
    void finish();
    void take_key(YamlNode node);
    void place(YamlNode node);

    FileId file_;
    std::string_view text_;
    std::size_t skipped_;
    std::size_t nodes_ = 0;
    std::vector<Open> open_;
    YamlNode root_;
};

// Cut at the end of the line: a scalar over several lines is shown by its first.
Span TreeBuilder::span_at(const YAML::Mark& mark, std::size_t length) const {
    const auto offset = static_cast<std::size_t>(std::max(mark.pos, 0)) + skipped_;
    const std::size_t begin = std::min(offset, text_.size());
    const std::size_t line_end = std::min(text_.find_first_of("\r\n", begin), text_.size());
    const std::size_t end = std::min(begin + length, line_end);
    return {file_, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

void TreeBuilder::count(Span span) {
    if (++nodes_ <= limits::yaml_nodes) return;
    refuse(Code::too_large, span, fmt::format("this file holds more than {} values", limits::yaml_nodes));
}

// The library gives plain scalars and untagged containers the tag "?", quoted scalars "!".
void TreeBuilder::check_plain(Span span, const std::string& tag, YAML::anchor_t anchor) const {
    if (anchor != YAML::NullAnchor)
        refuse(Code::bad_data, span, "anchors (`&name`) are not used in data files");
    if (tag.empty() || tag == "?" || tag == "!") return;
    refuse(Code::bad_data, span, "tags (`!name`) are not used in data files");
}

void TreeBuilder::OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) {
    // The mark of a missing value is that of whatever comes next; its key is the better place.
    const bool of_key = !open_.empty() && open_.back().has_key;
    const Span span = of_key ? open_.back().key_span : span_at(mark, 1);
    count(span);
    check_plain(span, "", anchor);
    YamlNode node;
    node.span = span;
    place(std::move(node));
}

void TreeBuilder::OnAlias(const YAML::Mark& mark, YAML::anchor_t) {
    refuse(Code::bad_data, span_at(mark, 1), "aliases (`*name`) are not used in data files");
}

void TreeBuilder::OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                           const std::string& value) {
    YamlNode node;
    node.kind = YamlKind::scalar;
    node.span = span_at(mark, value.size() + (tag == "!" ? 2 : 0));
    count(node.span);
    check_plain(node.span, tag, anchor);
    node.text = value;
    place(std::move(node));
}

void TreeBuilder::start(YamlKind kind, const YAML::Mark& mark, const std::string& tag,
                        YAML::anchor_t anchor) {
    Open open;
    open.node.kind = kind;
    open.node.span = span_at(mark, 1);
    count(open.node.span);
    check_plain(open.node.span, tag, anchor);
    if (wants_key()) refuse(Code::bad_data, open.node.span, "a key is a word, not a list or a map");
    if (open_.size() >= limits::yaml_depth) {
        refuse(Code::too_large, open.node.span,
               fmt::format("this file is nested more than {} deep", limits::yaml_depth));
    }
    open_.push_back(std::move(open));
}

void TreeBuilder::finish() {
    YamlNode node = std::move(open_.back().node);
    open_.pop_back();
    if (!node.children.empty()) node.span.end = std::max(node.span.end, node.children.back().span.end);
    place(std::move(node));
}

void TreeBuilder::take_key(YamlNode node) {
    if (node.kind != YamlKind::scalar) refuse(Code::bad_data, node.span, "a value has no key");
    Open& map = open_.back();
    if (!map.keys.insert(node.text).second) refuse(Code::bad_data, node.span, "this key stands here twice");
    map.has_key = true;
    map.key = std::move(node.text);
    map.key_span = node.span;
}

void TreeBuilder::place(YamlNode node) {
    if (open_.empty()) {
        root_ = std::move(node);
        return;
    }
    if (wants_key()) return take_key(std::move(node));
    Open& parent = open_.back();
    if (parent.has_key) {
        node.key = std::move(parent.key);
        node.key_span = parent.key_span;
        parent.has_key = false;
    }
    parent.node.children.push_back(std::move(node));
}

// Where a line starts that is longer than limits::yaml_line: the library's time grows with the square of what
// stands on one line.
std::optional<std::size_t> long_line(std::string_view text) {
    std::size_t start = 0;
    while (start < text.size()) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        if (end - start > limits::yaml_line) return start;
        start = end + 1;
    }
    return std::nullopt;
}

std::optional<Diagnostic> unreadable(FileId file, std::string_view text) {
    if (text.size() > limits::yaml_bytes) {
        return diagnose(Code::too_large, {file, 0, 0},
                        fmt::format("this file is larger than {} bytes", limits::yaml_bytes));
    }
    const auto place = [file](std::size_t at) {
        return Span{file, static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + 1)};
    };
    if (const auto bad = first_bad_utf8(text)) {
        return diagnose(Code::not_text, place(*bad), "this byte is not UTF-8 text");
    }
    const std::size_t zero = text.find('\0');
    if (zero != std::string_view::npos) {
        return diagnose(Code::not_text, place(zero), "a data file holds text, this is a zero byte");
    }
    if (const auto start = long_line(text)) {
        return diagnose(Code::too_large, place(*start),
                        fmt::format("this line is longer than {} bytes", limits::yaml_line));
    }
    return std::nullopt;
}

// Only ever the first document: asking the library for a second one after broken text may not end.
std::optional<YamlNode> parse(TreeBuilder& builder, std::string_view text) {
    std::istringstream stream{std::string(text)};
    YAML::Parser parser(stream);
    if (!parser.HandleNextDocument(builder)) return std::nullopt;
    if (parser)
        throw YAML::ParserException(YAML::Mark::null_mark(), "more follows after the end of the data");
    return builder.take();
}

}  // namespace

std::optional<YamlNode> read_yaml(const SourceManager& sources, FileId file, Diagnostics& diagnostics) {
    const std::string_view text = sources.text(file);
    if (std::optional<Diagnostic> problem = unreadable(file, text)) {
        diagnostics.add(std::move(*problem));
        return std::nullopt;
    }
    TreeBuilder builder(file, text);
    const auto report = [&](const YAML::Mark& mark, std::string_view why) {
        diagnostics.add(diagnose(Code::bad_data, builder.span_at(mark, 1),
                                 fmt::format("this is not YAML as used here: {}", why)));
    };
    try {
        if (std::optional<YamlNode> root = parse(builder, text)) return root;
        report(YAML::Mark::null_mark(), "the file is empty");
    } catch (Refused& refused) {
        diagnostics.add(std::move(refused.diagnostic));
    } catch (const YAML::Exception& error) {
        report(error.mark, error.msg);
    } catch (const std::exception& error) {
        report(YAML::Mark::null_mark(), error.what());
    }
    return std::nullopt;
}

}  // namespace rodwright
