// The graph while it is being built. Private to compiler/graph/.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "compiler/evaluate/design.hpp"
#include "compiler/evaluate/statements.hpp"
#include "compiler/graph/definition_memo.hpp"
#include "compiler/graph/piece.hpp"
#include "compiler/place/place.hpp"

namespace rodwright {

// The three axes of the piece that are a part's length, width and thickness.
struct PartAxes {
    Axis length{};
    Axis width{};
    Axis thick{};
};

// A part before kinds are told apart: features in its own box, from its least corner, along the piece's axes.
struct DraftPart {
    std::size_t instance = 0;
    Box body;
    PartAxes axes;
    bool usable = false;  // it has a place, a size and a grain
    std::vector<Feature> features;
    std::array<Extent, 3> extend;  // by piece axis
    std::vector<ShapeUse> shapes;
};

struct Draft {
    const Statements& statements;
    const Places& places;
    Design& design;
    Evaluator& evaluator;
    std::vector<DraftPart> parts = {};  // one for each instance
    std::vector<JointKind> joint_kinds = {};
    std::vector<Joint> joints = {};
    std::map<std::string, JointKindId> joint_keys = {};
    std::size_t feature_count = 0;
    std::size_t joint_count = 0;
    std::size_t trials = 0;  // pairs of parts that joins have looked at
    DefinitionMemo memo = {};
    std::set<std::pair<FileId, NodeId>> ordered = {};  // definitions that check_step_order() has seen

    const std::string& part_name(std::size_t part) const {
        return statements.declarations[statements.instances[part].declaration].name;
    }
};

// Boxes and axes of every part; reports parts without a grain.
void draft_parts(Draft& draft);
// Shapes of the written copies, and their mirror images on the others.
void draft_shapes(Draft& draft);
void draft_joins(Draft& draft);
// Reports every `after` in the steps of a joint or shape that names no step of any definition and no stage;
// of each definition once. A step that stands in a condition counts whether it is in use or not.
void check_step_order(Draft& draft, const Syntax& definition, Span used_at);
// What features count for: one each, and one for every corner of their profiles.
template <typename Features>
std::size_t weight_of(const Features& features) {
    std::size_t weight = features.size();
    for (const auto& feature : features) weight += feature.body.profile.size();
    return weight;
}

// Counts features towards the limit; reports the first that passes it and is false from then on.
bool count_features(Draft& draft, std::size_t more, Span where);
// The same for pairs of parts that a join looks at, and for joints.
bool count_trials(Draft& draft, std::size_t more, Span where);
bool count_joint(Draft& draft, Span where);

// Kinds and parts of the piece from the drafts: copies that are the same, turned or mirrored, share a kind.
void make_kinds(const Draft& draft, Piece& piece);

// The parts that each pattern leaves possible, one pattern after the other.
std::vector<PartId> parts_of(const Statements& statements, const std::vector<PartPattern>& patterns);

// Parts that are made, what they measure, and steps that are done.
void add_as_built(const Statements& statements, Piece& piece);

// `name(arguments)` as written, blanks evened out.
std::string call_label(const Syntax& call);

}  // namespace rodwright
