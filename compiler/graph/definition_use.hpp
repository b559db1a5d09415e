// A joint's or shape's definition, used in one place: its parameters bound, its statements evaluated.
//
// Everything that comes out is in the frame of the place (u, v, w as wide, deep, tall), so that a joint looks
// the same wherever it stands.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "compiler/evaluate/evaluator.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

// What the definition may know of a member, by the names of WRITING_JOINTS.md.
struct MemberView {
    std::string role;
    std::string part;  // as the design calls it
    MemberForm form{};
    std::vector<std::pair<std::string_view, Rational>> sizes;
};

struct FrameFeature {
    std::size_t member = 0;
    FeatureOp op{};
    Body body;      // trim, leave, remove
    Rational size;  // blend, bevel
};

struct FrameExtend {
    std::size_t member = 0;
    Rational by;
};

struct FrameFreedom {
    std::size_t member = 0;
    Direction way;  // frame axes
    std::optional<Rational> by;
};

struct DefinitionResult {
    Work work;
    std::vector<FrameFeature> features;
    std::vector<FrameExtend> extends;
    std::optional<Direction> slides;  // frame axes
    std::vector<FrameFreedom> lets;
    std::vector<std::string> glue;
    std::vector<Fastener> fasteners;
    std::vector<std::pair<std::string, Quantity>> unsaid;  // lets that are not among its numbers
    std::vector<Diagnostic> checks;                        // that do not hold; placed at the use
};

struct DefinitionCall {
    Syntax definition;  // joint or shape
    Syntax call;        // in the design
    Scope* scope = nullptr;
    std::vector<MemberView> members;
};

// An argument of a call, evaluated where the call stands.
struct GivenArgument {
    Syntax parameter;  // an equation node of the definition
    Syntax written;
    Value value;
};

// A size that a definition asked for, by index in the call's members and in the member's sizes.
struct SizeRead {
    std::size_t member = 0;
    std::size_t size = 0;
    Rational value;
};

class DefinitionMemo;

// Errors in the definition's own text are reported there, with a trace to the use. Null if it cannot be used.
// Uses that come out the same share their result.
std::shared_ptr<const DefinitionResult> use_definition(const DefinitionCall& call, const LengthStyle& style,
                                                       Evaluator& evaluator, DefinitionMemo& memo);

}  // namespace rodwright
