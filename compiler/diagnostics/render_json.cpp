#include <algorithm>
#include <nlohmann/json.hpp>

#include "compiler/diagnostics/excerpt.hpp"
#include "compiler/diagnostics/render.hpp"

namespace rodwright {

namespace {

using Json = nlohmann::ordered_json;

// Lines and columns count from one, the column in characters; `end` is the place after the last character.
Json place(Span span, const SourceManager& sources) {
    if (!is_known(sources, span.file)) {
        return {{"file", nullptr}, {"line", nullptr}, {"column", nullptr}, {"end", nullptr}};
    }
    const Position begin = sources.position(span.file, span.begin);
    const Position end = sources.position(span.file, std::max(span.begin, span.end));
    Json json;
    json["file"] = sources.name(span.file);
    json["line"] = begin.line;
    json["column"] = begin.column;
    json["end"] = {{"line", end.line}, {"column", end.column}};
    return json;
}

Json labels(const std::vector<Label>& list, const SourceManager& sources) {
    Json json = Json::array();
    for (const Label& label : list) {
        Json each = place(label.span, sources);
        each["text"] = label.text;
        json.push_back(std::move(each));
    }
    return json;
}

}  // namespace

std::string render_json(const Diagnostic& diagnostic, const SourceManager& sources) {
    Json json = place(diagnostic.primary, sources);
    json["code"] = info(diagnostic.code).code;
    json["severity"] = severity_word(diagnostic.severity);
    json["message"] = diagnostic.message;
    json["text"] = diagnostic.primary_text;
    json["labels"] = labels(diagnostic.labels, sources);
    json["notes"] = diagnostic.notes;
    json["help"] = diagnostic.help;
    json["trace"] = labels(diagnostic.trace, sources);
    if (!diagnostic.accepted.empty()) json["accepted"] = diagnostic.accepted;
    return json.dump(-1, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace rodwright
