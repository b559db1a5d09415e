#include <array>

#include "backends/graph/graph_backend.hpp"
#include "backends/graph/yaml_values.hpp"

namespace rodwright {
namespace {

constexpr std::size_t format_version = 1;

constexpr std::array<const char*, 5> feature_words = {"trim", "blend", "bevel", "leave", "remove"};
constexpr std::array<const char*, 3> form_words = {"box", "cylinder", "prism"};
constexpr std::array<const char*, 3> match_words = {"one_board", "sequence", "book"};
constexpr std::array<const char*, 3> fastener_words = {"dowel", "screw", "clip"};
constexpr std::array<const char*, 3> member_words = {"end", "face", "edge"};

template <typename Enum, std::size_t size>
std::string word_of(const std::array<const char*, size>& words, Enum value) {
    return words.at(static_cast<std::size_t>(value));
}

template <typename Items, typename PutFields>
void put_list(YAML::Emitter& out, const char* key, const Items& items, PutFields put_fields) {
    out << YAML::Key << key << YAML::Value << YAML::BeginSeq;
    for (const auto& item : items) {
        out << YAML::BeginMap;
        put_fields(item);
        out << YAML::EndMap;
    }
    out << YAML::EndSeq;
}

void put_style(YAML::Emitter& out, const LengthStyle& style) {
    out << YAML::Key << "unit" << YAML::Value << YAML::Flow << YAML::BeginMap;
    put(out, "unit", std::string(style.unit == LengthUnit::inch ? "in" : "mm"));
    put(out, "step", style.step);
    out << YAML::EndMap;
}

void put_wood(YAML::Emitter& out, const Wood& wood) {
    put(out, "name", wood.name);
    put(out, "species", wood.species);
    put(out, "common", wood.common);
    put(out, "cut", wood.cut);
    put(out, "density", wood.density);
    put(out, "colour", wood.colour);
    put(out, "sheet", wood.sheet);
    put(out, "radial", wood.radial);
    put(out, "tangential", wood.tangential);
}

void put_body(YAML::Emitter& out, const Body& body) {
    out << YAML::Key << "body" << YAML::Value << YAML::BeginMap;
    put(out, "form", word_of(form_words, body.form));
    put_frame(out, body.frame);
    if (body.form != BodyForm::prism) {
        put(out, "size_u", body.size_u);
        put(out, "size_v", body.size_v);
    }
    put(out, "length", body.length);
    if (body.form == BodyForm::prism) {
        out << YAML::Key << "profile" << YAML::Value << YAML::Flow << YAML::BeginSeq;
        for (const Point2& point : body.profile) {
            out << YAML::BeginSeq;
            put_rational(out, point.u);
            put_rational(out, point.v);
            out << YAML::EndSeq;
        }
        out << YAML::EndSeq;
    }
    out << YAML::EndMap;
}

void put_edges(YAML::Emitter& out, const std::vector<BoxEdge>& edges) {
    out << YAML::Key << "edges" << YAML::Value << YAML::Flow << YAML::BeginSeq;
    for (const BoxEdge& edge : edges) {
        out << YAML::BeginSeq << std::string(face_name(edge.a)) << std::string(face_name(edge.b))
            << YAML::EndSeq;
    }
    out << YAML::EndSeq;
}

void put_feature(YAML::Emitter& out, const Feature& feature) {
    put(out, "op", word_of(feature_words, feature.op));
    put(out, "made_by", feature.made_by);
    put(out, "label", feature.label);
    if (feature.joint != JointKindId::none) put(out, "joint", place_in_list(feature.joint));
    if (feature.op == FeatureOp::blend || feature.op == FeatureOp::bevel) {
        put_edges(out, feature.edges);
        put(out, "size", feature.size);
    } else {
        put_body(out, feature.body);
    }
}

void put_shape(YAML::Emitter& out, const ShapeUse& shape) {
    put(out, "definition", shape.work.definition);
    put(out, "label", shape.label);
    put_numbers(out, "numbers", shape.work.numbers);
    put_words(out, "words", shape.work.words);
}

void put_extend(YAML::Emitter& out, const std::array<Extent, 3>& extend) {
    out << YAML::Key << "extend" << YAML::Value << YAML::Flow << YAML::BeginSeq;
    for (const Extent& extent : extend) {
        out << YAML::BeginSeq;
        put_rational(out, extent.low);
        put_rational(out, extent.high);
        out << YAML::EndSeq;
    }
    out << YAML::EndSeq;
}

void put_glued(YAML::Emitter& out, const GluedUp& glued) {
    out << YAML::Key << "glued" << YAML::Value << YAML::Flow << YAML::BeginMap;
    if (glued.count) put(out, "boards", static_cast<std::size_t>(*glued.count));
    if (glued.narrowest) put(out, "narrowest", *glued.narrowest);
    if (glued.widest) put(out, "widest", *glued.widest);
    put(out, "alternating", std::string(glued.alternating ? "true" : "false"));
    out << YAML::EndMap;
}

void put_kind(YAML::Emitter& out, const Kind& kind) {
    put(out, "letter", kind.letter);
    put(out, "name", kind.name);
    if (!kind.wood.empty()) put(out, "wood", kind.wood);
    put(out, "size", kind.size);
    Vector overall;
    for (const Axis axis : all_axes) overall[axis] = kind.overall(axis);
    put(out, "overall", overall);
    put_extend(out, kind.extend);
    if (kind.mirror_of) put(out, "mirror_of", place_in_list(*kind.mirror_of));
    if (kind.glued) put_glued(out, *kind.glued);
    if (kind.one_show_face) put(out, "one_show_face", std::string("true"));
    put_ids(out, "parts", kind.parts);
    put_list(out, "features", kind.features, [&](const Feature& feature) { put_feature(out, feature); });
    put_list(out, "shapes", kind.shapes, [&](const ShapeUse& shape) { put_shape(out, shape); });
}

void put_part(YAML::Emitter& out, const Part& part) {
    put(out, "name", part.name);
    put(out, "declared", part.declared);
    put(out, "kind", place_in_list(part.kind));
    if (part.assembly != AssemblyId::none) put(out, "assembly", place_in_list(part.assembly));
    std::vector<std::string> from;
    for (const Direction direction : part.placement.turn.from) from.push_back(direction_word(direction));
    put(out, "from", from);
    put(out, "move", part.placement.move);
    put(out, "box", part.body);
}

void put_joint_kind(YAML::Emitter& out, const JointKind& kind, const LengthStyle& style) {
    put(out, "definition", kind.work.definition);
    put(out, "fastening", kind.fastening);
    put(out, "glue", kind.glue);
    put_numbers(out, "numbers", kind.work.numbers);
    put_words(out, "words", kind.work.words);
    put_list(out, "supplies", kind.work.supplies, [&](const Supply& supply) {
        put(out, "name", supply.name);
        put(out, "count", supply.count);
        put(out, "note", read_out(supply.note, style));
    });
    put_ids(out, "joints", kind.joints);
}

void put_joint(YAML::Emitter& out, const Joint& joint) {
    put(out, "kind", place_in_list(joint.kind));
    put_list(out, "members", joint.members, [&](const JointMember& member) {
        put(out, "role", member.role);
        put(out, "part", place_in_list(member.part));
        put(out, "face", std::string(face_name(member.face)));
        put(out, "form", word_of(member_words, member.form));
    });
    out << YAML::Key << "frame" << YAML::Value << YAML::Flow << YAML::BeginMap;
    put_frame(out, joint.frame);
    out << YAML::EndMap << YAML::Key << "contact" << YAML::Value << YAML::Flow << YAML::BeginSeq;
    put_rational(out, joint.contact_u);
    put_rational(out, joint.contact_v);
    out << YAML::EndSeq;
    if (joint.slides) put(out, "slides", direction_word(*joint.slides));
    put_list(out, "lets", joint.lets, [&](const Freedom& free) {
        put(out, "way", direction_word(free.way));
        if (free.by) put(out, "by", *free.by);
    });
    put(out, "hold", joint.hold);
    put_list(out, "fasteners", joint.fasteners, [&](const Fastener& fastener) {
        put(out, "form", word_of(fastener_words, fastener.form));
        put_body(out, fastener.body);
    });
}

void put_rest(YAML::Emitter& out, const Piece& piece) {
    put_list(out, "assemblies", piece.assemblies, [&](const Assembly& assembly) {
        put(out, "name", assembly.name);
        if (assembly.parent != AssemblyId::none) put(out, "parent", place_in_list(assembly.parent));
        put(out, "box", assembly.box);
        if (assembly.opens) put(out, "opens", *assembly.opens);
    });
    put_list(out, "loads", piece.loads, [&](const Load& load) {
        put(out, "force", load.force);
        put(out, "part", place_in_list(load.part));
        put(out, "face", std::string(face_name(load.face)));
        put(out, "place", load.place);
    });
    put_list(out, "uses", piece.uses, [&](const Use& use) {
        put(out, "what", use.what);
        if (!use.detail.empty()) put(out, "detail", use.detail);
        put(out, "people", static_cast<std::size_t>(use.people));
        put_ids(out, "on", use.on);
    });
    put_list(out, "matches", piece.matches, [&](const Match& match) {
        put(out, "how", word_of(match_words, match.how));
        put_ids(out, "parts", match.parts);
    });
    put_list(out, "finishes", piece.finishes, [&](const Finish& finish) {
        put(out, "name", finish.name);
        put(out, "coats", static_cast<std::size_t>(finish.coats));
    });
    put_list(out, "accepts", piece.accepts, [&](const Accept& accept) {
        put(out, "code", accept.code);
        put(out, "because", accept.because);
        if (!accept.on.empty()) put_ids(out, "on", accept.on);
    });
    out << YAML::Key << "climate" << YAML::Value << YAML::Flow << YAML::BeginMap;
    put(out, "driest", piece.climate.driest);
    put(out, "dampest", piece.climate.dampest);
    put(out, "kelvin", piece.climate.kelvin);
    put(out, "made_at", piece.climate.made_at);
    put(out, "said", piece.climate.said);
    out << YAML::EndMap;
}

}  // namespace

std::string piece_yaml(const Piece& piece) {
    YAML::Emitter out;
    out << YAML::BeginMap;
    put(out, "format", format_version);
    put(out, "piece", piece.name);
    put(out, "box", piece.box);
    put_style(out, piece.style);
    put_numbers(out, "params", piece.params);
    put_list(out, "woods", piece.woods, [&](const Wood& wood) { put_wood(out, wood); });
    put_list(out, "kinds", piece.kinds, [&](const Kind& kind) { put_kind(out, kind); });
    put_list(out, "parts", piece.parts, [&](const Part& part) { put_part(out, part); });
    put_list(out, "joint_kinds", piece.joint_kinds,
             [&](const JointKind& kind) { put_joint_kind(out, kind, piece.style); });
    put_list(out, "joints", piece.joints, [&](const Joint& joint) { put_joint(out, joint); });
    put_rest(out, piece);
    out << YAML::EndMap;
    return std::string(out.c_str()) + "\n";
}

}  // namespace rodwright
