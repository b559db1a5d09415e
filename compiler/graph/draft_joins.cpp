#include <fmt/format.h>

#include <algorithm>

#include "compiler/graph/draft.hpp"
#include "compiler/graph/isometry.hpp"
#include "compiler/graph/join_pairs.hpp"
#include "compiler/graph/member_view.hpp"

namespace rodwright {

namespace {

struct JoinJob {
    Draft& draft;
    const JoinStatement& statement;
    Syntax definition;
    std::vector<Syntax> roles;  // the two member declarations
};

std::string_view form_words(MemberForm form) {
    if (form == MemberForm::end) return "an end";
    return form == MemberForm::edge ? "an edge" : "a face";
}

// "an end", "a face", for the word of a member declaration.
std::string_view wanted_words(std::string_view word) {
    if (word == "end") return form_words(MemberForm::end);
    return form_words(word == "edge" ? MemberForm::edge : MemberForm::face);
}

// What the member counts as, if its face is of the kind that the joint asks for.
std::optional<MemberForm> member_form(std::string_view wanted, MemberForm actual) {
    const bool end = actual == MemberForm::end;
    if (wanted == "part") return actual;
    if (wanted == "end") return end ? std::optional(actual) : std::nullopt;
    if (wanted == "face") return end ? std::nullopt : std::optional(MemberForm::face);
    if (wanted == "edge") return end ? std::nullopt : std::optional(MemberForm::edge);
    return std::nullopt;
}

std::optional<MemberForm> checked_form(const JoinJob& job, std::size_t which, std::size_t part, Face face) {
    const Syntax role = job.roles[which];
    const MemberForm actual = form_of(job.draft.parts[part], face);
    const std::optional<MemberForm> form = member_form(role.child(1).text(), actual);
    if (form) return form;
    const Instance& instance = job.draft.statements.instances[part];
    const PartPattern& pattern = which == 0 ? job.statement.first.front() : job.statement.second.front();
    job.draft.evaluator.report(
        diagnose(Code::wrong_member, pattern.where,
                 fmt::format("`{}` needs {} as its {}; the {} of `{}` is {}", job.definition.child(0).text(),
                             wanted_words(role.child(1).text()), role.child(0).text(), face_name(face),
                             instance.name, form_words(actual)))
            .label(role.span(), "asked for here")
            .hint("an end is where the grain runs out; turn the part's `grain`, swap the members, or choose "
                  "another joint"));
    return std::nullopt;
}

Rational& extension(DraftPart& part, Face face) {
    Extent& extent = part.extend[static_cast<std::size_t>(axis_of(face))];
    return is_far(face) ? extent.high : extent.low;
}

// Joints are alike if everything that a maker would do or read is alike.
std::string joint_key(const DefinitionResult& result, const std::vector<MemberView>& members,
                      const LengthStyle& style) {
    std::string key = result.work.definition;
    for (const MemberView& member : members) key += "|" + member.part;
    const auto add = [&](const std::vector<std::pair<std::string, Quantity>>& numbers) {
        for (const auto& [name, quantity] : numbers) {
            // A joint and its mirror image differ in signs only.
            const Rational size = abs(quantity.value);
            key += "|" + name + "=" + size.get_str();
        }
    };
    add(result.work.numbers);
    add(result.unsaid);
    for (const auto& [name, word] : result.work.words) key += "|" + name + "=" + word;
    for (const StepTemplate& step : result.work.steps) {
        key += "|" + read_out(step.text, style);
        for (const StepSetting& setting : step.settings)
            key += "|" + setting.name + "=" + read_out(setting.value, style);
    }
    return key;
}

JointKindId joint_kind(Draft& draft, const JoinStatement& statement, const DefinitionResult& result,
                       const std::vector<MemberView>& members) {
    const auto next = static_cast<JointKindId>(draft.joint_kinds.size());
    std::string key = joint_key(result, members, draft.statements.style);
    // To write a key is quick beside what else a joint takes, unless its texts are very long.
    draft.evaluator.spend(key.size() / (8 * text_bytes_per_step), statement.call.span());
    const auto [found, added] = draft.joint_keys.emplace(std::move(key), next);
    if (added) draft.joint_kinds.push_back({result.work, statement.fastening, result.glue, {}});
    return found->second;
}

struct JoinPlace {
    std::array<std::size_t, 2> parts{};
    std::array<Face, 2> faces{};
    Frame frame;
};

void add_features(const JoinJob& job, const JoinPlace& place, const DefinitionResult& result,
                  JointKindId kind) {
    const Isometry to_piece = from_frame(place.frame);
    for (const FrameFeature& made : result.features) {
        DraftPart& part = job.draft.parts[place.parts[made.member]];
        Feature feature;
        feature.op = made.op;
        feature.body = to_piece.apply(made.body);
        for (const Axis axis : all_axes) feature.body.frame.origin[axis] -= part.body.low[axis];
        feature.size = made.size;
        feature.made_by = result.work.definition;
        feature.label = call_label(job.statement.call);
        feature.joint = kind;
        feature.where = job.statement.syntax.span();
        part.features.push_back(std::move(feature));
    }
    for (const FrameExtend& longer : result.extends) {
        Rational& extent = extension(job.draft.parts[place.parts[longer.member]], place.faces[longer.member]);
        extent = std::max(extent, longer.by);
    }
}

// See Joint::hold.
Box holding_box(const Isometry& to_piece, const DefinitionResult& result, const Box& contact) {
    const auto is_left = [](const FrameFeature& made) { return made.op == FeatureOp::leave; };
    const auto is_pocket = [](const FrameFeature& made) {
        return made.op == FeatureOp::remove && made.member == 1;
    };
    const bool any_left = std::ranges::any_of(result.features, is_left);
    std::optional<Box> hold;
    for (const FrameFeature& made : result.features) {
        if (!(any_left ? is_left(made) : is_pocket(made))) continue;
        const Box box = bounds_of(to_piece.apply(made.body));
        hold = hold ? box_around(*hold, box) : box;
    }
    return hold.value_or(contact);
}

void join_pair(const JoinJob& job, const JoinPair& pair) {
    const std::optional<MemberForm> first = checked_form(job, 0, pair.first, pair.contact.first);
    const std::optional<MemberForm> second = checked_form(job, 1, pair.second, pair.contact.second);
    if (!first || !second) return;
    const DraftPart& a = job.draft.parts[pair.first];
    const DraftPart& b = job.draft.parts[pair.second];
    const Box& contact = pair.contact.rectangle;
    const JoinPlace place{{pair.first, pair.second},
                          {pair.contact.first, pair.contact.second},
                          joint_frame(a, pair.contact.first, contact, pair.mirrored)};
    const auto role = [&](std::size_t i) { return std::string(job.roles[i].child(0).text()); };
    DefinitionCall call{job.definition, job.statement.call, job.statement.scope, {}};
    call.members.push_back(
        joint_member_view(a, role(0), job.draft.part_name(pair.first), *first, place.frame, contact));
    call.members.push_back(
        joint_member_view(b, role(1), job.draft.part_name(pair.second), *second, place.frame, contact));
    const std::shared_ptr<const DefinitionResult> result =
        use_definition(call, job.draft.statements.style, job.draft.evaluator, job.draft.memo);
    const Span where = job.statement.call.span();
    if (!result || !count_features(job.draft, weight_of(result->features), where)) return;
    if (!count_joint(job.draft, where)) return;
    for (const Diagnostic& check : result->checks) job.draft.evaluator.report(check);
    const JointKindId kind = joint_kind(job.draft, job.statement, *result, call.members);
    add_features(job, place, *result, kind);
    Joint joint;
    joint.kind = kind;
    joint.members = {{role(0), static_cast<PartId>(pair.first), place.faces[0], *first},
                     {role(1), static_cast<PartId>(pair.second), place.faces[1], *second}};
    joint.frame = place.frame;
    joint.contact_u = contact.size(place.frame.u.axis);
    joint.contact_v = contact.size(place.frame.v.axis);
    const Isometry to_piece = from_frame(place.frame);
    if (result->slides) joint.slides = to_piece.turn.apply(*result->slides);
    for (const FrameFreedom& free : result->lets) {
        const Direction way = to_piece.turn.apply(free.way);
        joint.lets.push_back({free.member == 0 ? way : -way, free.by});
    }
    joint.hold = holding_box(to_piece, *result, contact);
    joint.fasteners = result->fasteners;
    joint.where = job.statement.syntax.span();
    job.draft.joint_kinds[static_cast<std::size_t>(kind)].joints.push_back(
        static_cast<JointId>(job.draft.joints.size()));
    job.draft.joints.push_back(std::move(joint));
}

void report_unknown_joint(const Syntax& name, Draft& draft) {
    Diagnostic diagnostic =
        diagnose(Code::unknown_name, name.span(), fmt::format("there is no joint `{}`", name.text()));
    const std::string near = nearest_name(name.text(), draft.design.joint_names());
    diagnostic.help =
        near.empty() ? "`rodwright list joints` lists them; write your own with `joint name(...) { ... }`"
                     : fmt::format("did you mean `{}`?", near);
    draft.evaluator.report(std::move(diagnostic));
}

}  // namespace

void draft_joins(Draft& draft) {
    for (const JoinStatement& statement : draft.statements.joins) {
        const Syntax name = statement.call.child(0);
        const Syntax definition = draft.design.joint(name.text());
        if (!definition) {
            report_unknown_joint(name, draft);
            continue;
        }
        check_step_order(draft, definition, name.span());
        const JoinJob job{draft, statement, definition, definition.all(NodeKind::member_decl)};
        if (job.roles.size() != 2) {
            draft.evaluator.report(
                diagnose(Code::bad_argument, definition.child(0).span(), "a joint is of two members")
                    .label(name.span(), "used here"));
            continue;
        }
        for (const JoinPair& pair : join_pairs(draft, statement)) join_pair(job, pair);
    }
}

}  // namespace rodwright
