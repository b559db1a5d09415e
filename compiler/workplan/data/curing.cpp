#include "compiler/workplan/data/curing.hpp"

#include "compiler/workplan/data/work_fields.hpp"

namespace rodwright {
namespace {

bool read_glue(const YamlNode& node, Curing& curing, Diagnostics& diagnostics) {
    FieldReader fields(node, {"open", "clamp", "cure"}, diagnostics);
    fields.require({"open", "clamp", "cure"});
    curing.glues[node.key] = {node.key, seconds_of(fields, "open"), seconds_of(fields, "clamp"),
                              seconds_of(fields, "cure")};
    return fields.ok();
}

Drying read_drying(const YamlNode& node, Diagnostics& diagnostics, bool& ok) {
    FieldReader fields(node, {"recoat", "cure"}, diagnostics);
    fields.require({"recoat", "cure"});
    const Drying drying{seconds_of(fields, "recoat"), seconds_of(fields, "cure")};
    ok = ok && fields.ok();
    return drying;
}

}  // namespace

const Drying& Curing::finish(const std::string& name) const {
    const auto found = finishes.find(name);
    return found == finishes.end() ? usual_finish : found->second;
}

std::optional<Curing> Curing::with_glue(const std::string& name) const {
    const auto found = glues.find(name);
    if (found == glues.end()) return std::nullopt;
    Curing curing = *this;
    curing.glue = found->second;
    return curing;
}

std::optional<Curing> read_curing(const SourceManager& sources, FileId file, Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"usual", "spread", "glues", "usual_finish", "finishes"}, diagnostics);
    const std::string usual = fields.text("usual");
    fields.require({"spread"});
    Curing curing;
    curing.spread = seconds_of(fields, "spread");
    const YamlNode* glues = fields.map("glues");
    const YamlNode* usual_finish = fields.map("usual_finish");
    const YamlNode* finishes = fields.map("finishes");
    if (!fields.ok()) return std::nullopt;
    bool ok = true;
    for (const YamlNode& node : glues->children) ok = read_glue(node, curing, diagnostics) && ok;
    curing.usual_finish = read_drying(*usual_finish, diagnostics, ok);
    for (const YamlNode& node : finishes->children)
        curing.finishes[node.key] = read_drying(node, diagnostics, ok);
    const auto glue = curing.glues.find(usual);
    if (glue == curing.glues.end()) {
        fields.fault(*fields.entry("usual"), "there is no such glue below");
        return std::nullopt;
    }
    curing.glue = glue->second;
    if (!ok) return std::nullopt;
    return curing;
}

}  // namespace rodwright
