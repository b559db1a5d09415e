// YAML files as a plain tree. The only place that knows the YAML library's parser.
//
// Narrower than YAML on purpose: one document, no anchors, aliases or tags, keys are words and each stands
// once. Scalars stay text; yaml_fields.hpp reads numbers as the language reads them, so that `010`, `0x10`,
// `yes` and `1,5` mean nothing special here.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/diagnostics/source.hpp"

namespace rodwright {

enum class YamlKind : std::uint8_t { nothing, scalar, list, map };

struct YamlNode {
    YamlKind kind = YamlKind::nothing;
    std::string text;  // of a scalar
    Span span;
    std::string key;  // where the node is an entry of a map
    Span key_span;
    std::vector<YamlNode> children;  // of a list or a map, as written
};

// Empty, with a diagnostic at its place, if the file is not such a document: Code::bad_data, Code::not_text
// for bytes that are not UTF-8, Code::too_large past limits::yaml_bytes, yaml_nodes or yaml_depth.
std::optional<YamlNode> read_yaml(const SourceManager& sources, FileId file, Diagnostics& diagnostics);

}  // namespace rodwright
