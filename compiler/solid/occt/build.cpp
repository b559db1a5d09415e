#include "compiler/solid/occt/build.hpp"

#include "compiler/solid/occt/booleans.hpp"
#include "compiler/solid/occt/easing.hpp"
#include "compiler/solid/occt/guard.hpp"
#include "compiler/solid/occt/shapes.hpp"

namespace rodwright::occt {

namespace {

struct Tool {
    const Feature* feature;
    TopoDS_Shape shape;
};

std::string quoted(const std::string& name) {
    return "`" + name + "`";
}

std::string called(const Feature& feature) {
    return quoted(feature.label.empty() ? feature.made_by : feature.label);
}

class Builder {
  public:
    Builder(const Kind& kind, Diagnostics& diagnostics) : kind_(kind), diagnostics_(diagnostics) {}

    TopoDS_Shape build() {
        if (!guarded([&] { shape_ = box_shape(Vector(), kind_.size); })) {
            report(kind_.where,
                   "the stock of " + quoted(kind_.name) + " cannot be made: a size is not above zero");
            return {};
        }
        apply(FeatureOp::trim);
        ease_edges(FeatureOp::blend);
        ease_edges(FeatureOp::bevel);
        apply(FeatureOp::leave);
        apply(FeatureOp::remove);
        return shape_.IsNull() ? shape_ : ready_to_draw(merge_faces(shape_));
    }

  private:
    std::vector<const Feature*> features(FeatureOp op) const {
        std::vector<const Feature*> found;
        for (const Feature& feature : kind_.features) {
            if (feature.op == op) found.push_back(&feature);
        }
        return found;
    }

    void report(Span where, std::string message) {
        diagnostics_.add(diagnose(Code::solid_failed, where, std::move(message)));
    }

    void report_body(const Feature& feature) {
        report(feature.where,
               "a body of " + called(feature) + " on " + quoted(kind_.name) + " cannot be built");
    }

    std::vector<Tool> tools(FeatureOp op) {
        std::vector<Tool> made;
        for (const Feature* feature : features(op)) {
            TopoDS_Shape shape;
            const bool ran = guarded([&] { shape = body_shape(feature->body); });
            if (ran && !shape.IsNull()) {
                made.push_back({feature, shape});
            } else {
                report_body(*feature);
            }
        }
        return made;
    }

    void apply(FeatureOp op) {
        const std::vector<Tool> made = tools(op);
        if (made.empty() || shape_.IsNull()) return;
        const Boolean how = op == FeatureOp::leave ? Boolean::join : Boolean::cut;
        std::vector<TopoDS_Shape> shapes;
        for (const Tool& tool : made) shapes.push_back(tool.shape);
        const TopoDS_Shape before = shape_;
        if (const auto combined = combine(how, shape_, shapes)) {
            shape_ = *combined;
        } else {
            apply_singly(how, made);
        }
        check_whole(how, before, made);
    }

    // Says which body is at fault, and goes on without it.
    void apply_singly(Boolean how, const std::vector<Tool>& made) {
        for (const Tool& tool : made) {
            if (shape_.IsNull()) return;
            if (const auto combined = combine(how, shape_, {tool.shape})) {
                shape_ = *combined;
            } else {
                report_body(*tool.feature);
            }
        }
    }

    // A part is one piece of wood.
    void check_whole(Boolean how, const TopoDS_Shape& before, const std::vector<Tool>& made) {
        if (shape_.IsNull()) {
            report(made.back().feature->where, "nothing is left of " + quoted(kind_.name));
            return;
        }
        const int pieces = count_solids(shape_);
        if (pieces <= count_solids(before)) return;
        std::string message = quoted(kind_.name) + " comes apart into " + std::to_string(pieces) + " pieces";
        for (const Tool& tool : made) {
            const auto alone = combine(how, before, {tool.shape});
            if (!alone || count_solids(*alone) <= count_solids(before)) continue;
            report(tool.feature->where, message + ": see " + called(*tool.feature));
            return;
        }
        report(kind_.where, std::move(message));
    }

    void ease_edges(FeatureOp op) {
        if (shape_.IsNull()) return;
        for (const Easing& easing : ease(shape_, op, features(op))) {
            if (easing.found == 0 || easing.sharp > 0) report_sharp(easing);
        }
    }

    void report_sharp(const Easing& easing) {
        const std::string what = called(*easing.feature);
        const std::string on = " of " + quoted(kind_.name);
        if (easing.found == 0) {
            diagnostics_.add(diagnose(Code::left_sharp, easing.feature->where,
                                      what + " finds no edge" + on + " where it is asked for")
                                 .hint("name an edge that is still there after the part is trimmed"));
            return;
        }
        diagnostics_.add(diagnose(Code::left_sharp, easing.feature->where,
                                  std::to_string(easing.sharp) + " of " + std::to_string(easing.found) +
                                      " edges" + on + " left sharp: " + what + " does not fit there")
                             .hint("make it smaller, or name only the edges that have room for it"));
    }

    const Kind& kind_;
    Diagnostics& diagnostics_;
    TopoDS_Shape shape_;
};

}  // namespace

TopoDS_Shape build_kind(const Kind& kind, Diagnostics& diagnostics) {
    return Builder(kind, diagnostics).build();
}

}  // namespace rodwright::occt
