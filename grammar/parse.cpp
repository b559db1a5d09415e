#include "grammar/parse.hpp"

#include "grammar/recorder.hpp"

namespace rodwright {
namespace {

// A tree of which nothing is known.
Tree broken_tree(FileId file, std::string_view text, std::vector<Comment> comments) {
    const auto end = static_cast<std::uint32_t>(text.size());
    return {file,
            text,
            {{NodeKind::file, Operator::none, 0, end, 2}, {NodeKind::broken, Operator::none, 0, end, 2}},
            std::move(comments)};
}

// False if there were too many errors to go on.
bool record(std::string_view text, Recorder& recorder) {
    const std::size_t mark = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
    rules::Input in(text.data() + mark, text.data() + text.size(), "");
    recorder.events.reserve(text.size() / 3);
    try {
        return tao::pegtl::parse<rules::file, tao::pegtl::nothing, Record>(in, recorder);
    } catch (const GiveUp&) {
        return false;
    }
}

}  // namespace

Tree parse(const SourceManager& sources, FileId file, Diagnostics& diagnostics) {
    const std::string_view text = sources.text(file);
    if (std::optional<Diagnostic> problem = check_text(file, text)) {
        diagnostics.add(*std::move(problem));
        return broken_tree(file, text, {});
    }
    Recorder recorder{text, file, diagnostics};
    if (!record(text, recorder)) return broken_tree(file, text, std::move(recorder.comments));
    std::vector<Node> nodes = build_nodes(recorder.events, text);
    const std::size_t deep = first_too_deep(nodes, limits::tree_depth);
    if (deep < nodes.size()) {
        diagnostics.add(too_many_operators(file, nodes[deep].begin, nodes[deep].end));
        return broken_tree(file, text, std::move(recorder.comments));
    }
    nodes.front().begin = 0;
    nodes.front().end = static_cast<std::uint32_t>(text.size());
    return {file, text, std::move(nodes), std::move(recorder.comments)};
}

}  // namespace rodwright
