#include "tests/support/piece_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright::testing {

namespace {

std::size_t index(Axis axis) {
    return static_cast<std::size_t>(axis);
}

void step_along(Vector& point, Direction direction, const Rational& by) {
    point[direction.axis] += direction.positive ? by : Rational(-by);
}

Vector into_piece(const Vector& point, const Placement& placement) {
    Vector result = placement.turn.apply(point);
    for (const Axis axis : all_axes) result[axis] += placement.move[axis];
    return result;
}

std::vector<Point2> section(const Body& body) {
    const Rational u = body.size_u / 2;
    const Rational v = body.size_v / 2;
    if (body.form == BodyForm::cylinder) return {{0, 0}};
    if (body.form == BodyForm::prism) return body.profile;
    return {{-u, -v}, {u, -v}, {u, v}, {-u, v}};
}

bool before(const Vector& a, const Vector& b) {
    return a.at < b.at;
}

std::string text_of(const Rational& value) {
    return value.get_str();
}

std::string text_of(const Vector& vector) {
    return fmt::format("({} {} {})", text_of(vector.at[0]), text_of(vector.at[1]), text_of(vector.at[2]));
}

std::string text_of(const Box& box) {
    return text_of(box.low) + text_of(box.high);
}

std::string text_of(Direction direction) {
    return fmt::format("{}{}", direction.positive ? '+' : '-', axis_name(direction.axis));
}

Face turned(const Turn& turn, Face face) {
    const Direction direction = turn.apply(outward(face));
    return face_of(direction.axis, direction.positive);
}

std::string edge_text(Face a, Face b) {
    return fmt::format("{} {}", face_name(std::min(a, b)), face_name(std::max(a, b)));
}

std::vector<std::string> edge_texts(const Feature& feature, const Placement& placement,
                                    const Reflection& reflection) {
    std::vector<std::string> result;
    for (const BoxEdge& edge : feature.edges) {
        result.push_back(edge_text(reflection.apply(turned(placement.turn, edge.a)),
                                   reflection.apply(turned(placement.turn, edge.b))));
    }
    std::sort(result.begin(), result.end());
    return result;
}

std::string feature_text(const Feature& feature, const Placement& placement, const Reflection& reflection) {
    std::string text =
        fmt::format("{} {} {}", static_cast<int>(feature.op), feature.made_by, text_of(feature.size));
    if (feature.op == FeatureOp::blend || feature.op == FeatureOp::bevel) {
        return fmt::format("{} {}", text, fmt::join(edge_texts(feature, placement, reflection), ", "));
    }
    const bool cylinder = feature.body.form == BodyForm::cylinder;
    text += cylinder ? " diameter " + text_of(feature.body.size_u) : "";
    std::vector<Vector> corners = placed_corners(feature.body, placement);
    for (Vector& corner : corners) corner = reflection.apply(corner);
    std::sort(corners.begin(), corners.end(), before);
    for (const Vector& corner : corners) text += " " + text_of(corner);
    return text;
}

const LengthStyle style;  // any will do to compare

std::string work_text(const Work& work, bool texts) {
    std::string result = work.definition;
    for (const auto& [name, quantity] : work.numbers)
        result += fmt::format(" {}={}", name, text_of(quantity.value));
    for (const auto& [name, word] : work.words) result += fmt::format(" {}={}", name, word);
    if (!texts) return result;
    for (const StepTemplate& step : work.steps) {
        result += fmt::format("\n    step {} {} {}", step.name, step.member, read_out(step.text, style));
        for (const StepSetting& setting : step.settings)
            result += fmt::format(" {}={}", setting.name, read_out(setting.value, style));
    }
    for (const Supply& supply : work.supplies) {
        result += fmt::format("\n    supply {} {} {}", supply.name, text_of(supply.count),
                              read_out(supply.note, style));
    }
    return result;
}

std::string kind_text(const Kind& kind, bool texts) {
    std::string text =
        fmt::format("kind {} {} {} {} mirror {}\n", kind.letter, kind.name, kind.wood, text_of(kind.size),
                    kind.mirror_of ? static_cast<int>(*kind.mirror_of) : -1);
    for (const Extent& extent : kind.extend) {
        text += fmt::format("  extend {} {}\n", text_of(extent.low), text_of(extent.high));
    }
    std::vector<std::string> features;
    for (const Feature& feature : kind.features) features.push_back(feature_text(feature, {}, {}));
    std::sort(features.begin(), features.end());
    text += fmt::format("  {}\n", fmt::join(features, "\n  "));
    for (const ShapeUse& shape : kind.shapes)
        text += fmt::format("  shape {}\n", work_text(shape.work, texts));
    return text;
}

std::string joint_text(const Piece& piece, const Joint& joint) {
    std::string text = fmt::format("joint {}", static_cast<int>(joint.kind));
    for (const JointMember& member : joint.members) {
        text += fmt::format(" {} {}.{} {}", member.role, piece[member.part].name, face_name(member.face),
                            static_cast<int>(member.form));
    }
    return text + fmt::format(" at {} {} {} {}, {} by {}, slides {}\n", text_of(joint.frame.origin),
                              text_of(joint.frame.u), text_of(joint.frame.v), text_of(joint.frame.w),
                              text_of(joint.contact_u), text_of(joint.contact_v),
                              joint.slides ? text_of(*joint.slides) : "nowhere");
}

}  // namespace

Vector Reflection::apply(const Vector& point) const {
    Vector result = point;
    for (const Axis axis : all_axes) {
        if (along[index(axis)]) result[axis] = container.low[axis] + container.high[axis] - point[axis];
    }
    return result;
}

Face Reflection::apply(Face face) const {
    return along[index(axis_of(face))] ? opposite(face) : face;
}

Box Reflection::apply(const Box& box) const {
    Box result{apply(box.low), apply(box.high)};
    for (const Axis axis : all_axes) {
        if (along[index(axis)]) std::swap(result.low[axis], result.high[axis]);
    }
    return result;
}

std::vector<Vector> placed_corners(const Body& body, const Placement& placement) {
    std::vector<Vector> corners;
    for (const Point2& point : section(body)) {
        for (const bool far : {false, true}) {
            Vector corner = body.frame.origin;
            step_along(corner, body.frame.u, point.u);
            step_along(corner, body.frame.v, point.v);
            if (far) step_along(corner, body.frame.w, body.length);
            corners.push_back(into_piece(corner, placement));
        }
    }
    return corners;
}

Box placed_box(const Body& body, const Placement& placement) {
    const std::vector<Vector> corners = placed_corners(body, placement);
    Box box{corners.front(), corners.front()};
    for (const Vector& corner : corners) {
        for (const Axis axis : all_axes) {
            box.low[axis] = std::min(box.low[axis], corner[axis]);
            box.high[axis] = std::max(box.high[axis], corner[axis]);
        }
    }
    return box;
}

std::vector<std::string> placed_features(const Piece& piece, const Part& part, const Reflection& reflection) {
    std::vector<std::string> lines;
    for (const Feature& feature : piece[part.kind].features) {
        lines.push_back(feature_text(feature, part.placement, reflection));
    }
    std::sort(lines.begin(), lines.end());
    return lines;
}

std::vector<std::string> placed_edges(const Feature& feature, const Placement& placement) {
    return edge_texts(feature, placement, {});
}

std::string piece_text(const Piece& piece, bool texts) {
    std::string text = fmt::format("piece {} {}\n", piece.name, text_of(piece.box));
    for (const Wood& wood : piece.woods)
        text += fmt::format("wood {} {} {}\n", wood.name, wood.species, wood.cut);
    for (const Kind& kind : piece.kinds) text += kind_text(kind, texts);
    for (const Part& part : piece.parts) {
        text += fmt::format("part {} kind {} {} move {} from", part.name, static_cast<int>(part.kind),
                            text_of(part.body), text_of(part.placement.move));
        for (const Direction direction : part.placement.turn.from) text += " " + text_of(direction);
        text += "\n";
    }
    for (const JointKind& kind : piece.joint_kinds) {
        text +=
            fmt::format("joint kind {} glue {}\n", work_text(kind.work, texts), fmt::join(kind.glue, " "));
    }
    for (const Joint& joint : piece.joints) text += joint_text(piece, joint);
    for (const Assembly& assembly : piece.assemblies) {
        text += fmt::format("assembly {} {}\n", assembly.name, text_of(assembly.box));
    }
    for (const Load& load : piece.loads) {
        text += fmt::format("load {} {}.{} {}\n", text_of(load.force.value), piece[load.part].name,
                            face_name(load.face), load.place);
    }
    return text;
}

}  // namespace rodwright::testing
