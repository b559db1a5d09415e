#include <fmt/format.h>

#include <algorithm>

#include "compiler/graph/draft.hpp"
#include "compiler/graph/isometry.hpp"
#include "compiler/graph/member_view.hpp"
#include "compiler/graph/selector.hpp"

namespace rodwright {

namespace {

// One face or edge that a shape is applied to.
struct Target {
    Frame frame;
    MemberForm form{};
    std::optional<BoxEdge> edge;
};

struct ShapeJob {
    Draft& draft;
    const ShapeStatement& statement;
    DraftPart& part;
    Syntax definition;
};

std::string_view target_word(const Syntax& definition) {
    return definition.find(NodeKind::member_decl).child(1).text();
}

void refuse_target(const ShapeJob& job, const Syntax& selector, std::string_view wanted) {
    job.draft.evaluator.report(
        diagnose(Code::bad_selector, selector.span(),
                 fmt::format("`{}` is worked on {}, `{}` names something else",
                             job.definition.child(0).text(), wanted, selector.text())));
}

std::vector<Target> targets(const ShapeJob& job, const Syntax& selector) {
    const Instance& instance = job.draft.statements.instances[job.part.instance];
    const Container& container = *job.draft.statements.declarations[instance.declaration].container;
    Box envelope;
    for (const Face face : all_faces) {
        const Value value = job.draft.evaluator.settled(job.draft.statements.face(container, face));
        if (const auto* known = std::get_if<Quantity>(&value)) {
            (is_far(face) ? envelope.high : envelope.low)[axis_of(face)] = known->value;
        }
    }
    const std::optional<Selection> chosen = select(selector, job.part, envelope, job.draft.evaluator);
    std::vector<Target> result;
    if (!chosen) return result;
    const std::string_view wanted = target_word(job.definition);
    const bool wants_edges = wanted == "edge" || wanted == "edges";
    const bool wants_end = wanted == "end";
    if (wants_edges != chosen->faces.empty()) {
        refuse_target(job, selector, wants_edges ? "edges" : "faces");
        return result;
    }
    for (const BoxEdge& edge : chosen->edges) {
        result.push_back({edge_frame(job.part, edge), MemberForm::edge, edge});
    }
    for (const Face face : chosen->faces) {
        const MemberForm form = form_of(job.part, face);
        if (wants_end && form != MemberForm::end) {
            refuse_target(job, selector, "ends");
            return {};
        }
        result.push_back({face_frame(job.part, face), form == MemberForm::end ? form : MemberForm::face, {}});
    }
    return result;
}

// From the frame of the place to the part's own box.
Isometry into_part(const Frame& frame, const Box& body) {
    Isometry move = from_frame(frame);
    for (const Axis axis : all_axes) move.move[axis] -= body.low[axis];
    return move;
}

void add_feature(std::vector<Feature>& features, Feature feature) {
    const bool eases = feature.op == FeatureOp::blend || feature.op == FeatureOp::bevel;
    if (eases && !features.empty()) {
        // Edges that are eased alike by one line are one feature.
        Feature& last = features.back();
        if (last.op == feature.op && last.size == feature.size && last.where == feature.where) {
            last.edges.push_back(feature.edges.front());
            return;
        }
    }
    features.push_back(std::move(feature));
}

void add_features(const ShapeJob& job, const Target& target, const DefinitionResult& result,
                  const std::string& label) {
    const Isometry move = into_part(target.frame, job.part.body);
    for (const FrameFeature& made : result.features) {
        Feature feature;
        feature.op = made.op;
        feature.body = move.apply(made.body);
        if (target.edge) feature.edges = {*target.edge};
        feature.size = made.size;
        feature.made_by = result.work.definition;
        feature.label = label;
        feature.where = job.statement.syntax.span();
        add_feature(job.part.features, std::move(feature));
    }
}

// Bytes of the texts that every use of a shape takes with it.
std::size_t text_size(const Work& work) {
    std::size_t size = work.doc.size();
    for (const StepTemplate& step : work.steps) {
        size += size_of(step.text) + size_of(step.caution);
        for (const StepSetting& setting : step.settings)
            size += size_of(setting.value) + size_of(setting.worked_out);
        for (const StepAfter& after : step.after) size += size_of(after.because);
    }
    for (const Supply& supply : work.supplies) size += size_of(supply.note);
    return size;
}

bool count_uses(Draft& draft, const std::vector<ShapeUse>& uses, Span where) {
    std::size_t size = 0;
    for (const ShapeUse& use : uses) size += text_size(use.work);
    return draft.evaluator.spend(size / text_bytes_per_step, where);
}

void report_checks(const DefinitionResult& result, Evaluator& evaluator) {
    for (const Diagnostic& check : result.checks) evaluator.report(check);
}

void apply_shape(const ShapeJob& job) {
    const Syntax call = job.statement.syntax.child(0);
    const Syntax role = job.definition.find(NodeKind::member_decl).child(0);
    const std::string label = call_label(job.statement.syntax);
    std::optional<ShapeUse> use;
    for (const Syntax& selector : job.statement.syntax.all(NodeKind::selector)) {
        for (const Target& target : targets(job, selector)) {
            DefinitionCall definition_call{job.definition, call, job.statement.scope, {}};
            definition_call.members.push_back(shape_target_view(job.part, std::string(role.text()),
                                                                job.draft.part_name(job.part.instance),
                                                                target.form, target.frame));
            const std::shared_ptr<const DefinitionResult> result = use_definition(
                definition_call, job.draft.statements.style, job.draft.evaluator, job.draft.memo);
            if (!result || !count_features(job.draft, weight_of(result->features), call.span())) return;
            report_checks(*result, job.draft.evaluator);
            add_features(job, target, *result, label);
            if (!use) use = ShapeUse{result->work, label, job.statement.syntax.span()};
        }
    }
    if (use && count_uses(job.draft, {*use}, call.span())) job.part.shapes.push_back(std::move(*use));
}

void report_unknown_shape(const Syntax& name, Draft& draft) {
    Diagnostic diagnostic =
        diagnose(Code::unknown_name, name.span(), fmt::format("there is no shape `{}`", name.text()));
    const std::string near = nearest_name(name.text(), draft.design.shape_names());
    diagnostic.help =
        near.empty() ? "`rodwright list shapes` lists them; write your own with `shape name(...) { ... }`"
                     : fmt::format("did you mean `{}`?", near);
    draft.evaluator.report(std::move(diagnostic));
}

// The image of a written copy's features on a copy that mirrors it.
void mirror_features(const DraftPart& written, DraftPart& copy, const Hands& hands) {
    Isometry mirror;
    for (const Axis axis : all_axes) {
        if (hands[static_cast<std::size_t>(axis)] != 1) continue;
        mirror.turn.from[static_cast<std::size_t>(axis)].positive = false;
        mirror.move[axis] = written.body.size(axis);
    }
    for (Feature feature : written.features) {
        feature.body = mirror.apply(feature.body);
        for (BoxEdge& edge : feature.edges) edge = mirror.apply(edge);
        copy.features.push_back(std::move(feature));
    }
    copy.shapes = written.shapes;
}

}  // namespace

void draft_shapes(Draft& draft) {
    for (const ShapeStatement& statement : draft.statements.shapes) {
        DraftPart& part = draft.parts[statement.instance];
        if (!part.usable) continue;
        const Syntax name = statement.syntax.child(0).child(0);
        const Syntax definition = draft.design.shape(name.text());
        if (definition) {
            check_step_order(draft, definition, name.span());
            apply_shape({draft, statement, part, definition});
        } else {
            report_unknown_shape(name, draft);
        }
    }
    for (std::size_t i = 0; i < draft.parts.size(); ++i) {
        const Instance& instance = draft.statements.instances[i];
        if (instance.master == i || !draft.parts[i].usable) continue;
        const DraftPart& written = draft.parts[instance.master];
        const Span where = draft.statements.declarations[instance.declaration].where;
        if (count_features(draft, weight_of(written.features), where) &&
            count_uses(draft, written.shapes, where)) {
            mirror_features(written, draft.parts[i], instance.hands);
        }
    }
}

}  // namespace rodwright
