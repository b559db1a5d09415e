// The order of work as a value: every piece of work once, when it is done, at which setting, and what is put
// together in which glue-up.
//
// Texts are phrases: whoever prints them says in which unit lengths are read. Times are seconds.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "compiler/check/findings.hpp"
#include "compiler/data/shop.hpp"
#include "compiler/geometry/geometry.hpp"
#include "compiler/graph/piece.hpp"
#include "compiler/graph/stage.hpp"

namespace rodwright {

using Seconds = std::int64_t;

// Parts of one kind that work is done to.
struct WorkedKind {
    KindId kind = KindId::none;
    std::size_t count = 0;
};

// Why an operation comes after another.
struct WorkReason {
    std::size_t after = 0;  // index in WorkPlan::operations, smaller than the operation's own
    Phrase because;         // may say nothing: then the order is plain from the work itself
    Seconds wait = 0;       // that has to pass between the two
    bool shown = false;     // whether it is worth a line to someone who reads the list in order
};

struct Labour {
    Seconds set_up = 0;   // of the machine, or to get ready
    Seconds work = 0;     // all parts together, without the set-up
    bool assumed = true;  // no source for these times
};

// When it is done, on a clock that starts with the work.
struct WorkTime {
    std::size_t worker = 0;
    Seconds begin = 0;  // of the set-up, if there is one
    Seconds end = 0;
    bool sets_up = false;  // whether the machine is set up for it, or stands at this setting already
};

struct Operation {
    Stage stage{};
    std::string work;               // "mortise_and_tenon", a shape's name, or empty for general work
    std::string name;               // "cut_mortise"
    std::vector<Phrase> text;       // a line each
    std::vector<PartId> parts;      // ascending
    std::vector<WorkedKind> kinds;  // the same by kind
    std::size_t times = 0;          // how often it is done: parts, joints, uses of a shape
    std::string machine;            // may be empty: by hand
    std::optional<ToolNeed::Alternative> cutter;
    std::vector<StepSetting> settings;
    bool test_piece = false;
    Phrase caution;  // may say nothing
    Labour labour;
    Seconds wait = 0;  // after it, until the piece is done or other work on its parts may go on
    std::optional<std::size_t> set_up;   // index in WorkPlan::set_ups
    std::optional<std::size_t> glue_up;  // index in WorkPlan::glue_ups
    std::vector<WorkReason> after;
    WorkTime time;
};

// One setting of a machine, and all that is done at it.
struct SetUp {
    std::string machine;
    std::optional<ToolNeed::Alternative> cutter;
    std::vector<StepSetting> settings;
    bool test_piece = false;
    Seconds time = 0;
    std::vector<std::size_t> operations;  // in the order of work
};

// A part or group that is brought in along a straight motion.
struct BringIn {
    std::vector<PartId> goes;  // ascending
    std::vector<PartId> to;
    Direction way;
    std::vector<JointId> glued;
    std::vector<JointId> dry;  // closed by the same motion, and left without glue
};

// Equal where the corners are square: between opposite corners of the box around what is glued.
struct Diagonal {
    Axis along{};
    Axis across{};
    Rational a;  // mm
    Rational b;
    double length = 0;  // mm
};

struct ClampUse {
    Axis along{};
    Rational reach;  // mm, between the jaws, pads included
    int count = 0;
};

struct GlueUp {
    std::vector<PartId> parts;     // all that is one after it, ascending
    std::vector<BringIn> motions;  // in order
    std::size_t joints = 0;        // with glue
    Seconds open_needed = 0;       // for the joints that have to be closed together
    std::vector<ClampUse> clamps;
    std::optional<Diagonal> diagonal;
};

struct StageNote {
    Stage stage{};
    std::string because;  // why it comes after the stage before; may be empty
};

// What the plan takes, and what no plan can do without.
struct WorkSums {
    std::size_t workers = 1;
    Seconds day = 0;       // worked, of 24 h
    Seconds hands = 0;     // of all workers
    Seconds makespan = 0;  // to the end of the last wait
    Seconds makespan_bound = 0;
    std::string bound_reason;  // "the longest chain of work and waiting"
    std::size_t set_ups = 0;   // made
    std::size_t set_ups_bound = 0;
    bool assumed = true;  // times without source are among them
};

struct GlueFacts {
    std::string name;  // "yellow_PVA"
    Seconds open = 0;
    Seconds clamp = 0;
    Seconds cure = 0;
};

struct WorkPlan {
    std::string title;
    Shop shop;                          // that it is planned for
    std::string caution;                // once, before all work
    std::vector<StageNote> stages;      // the first time that each is come to
    std::vector<Operation> operations;  // number = index + 1
    std::vector<Operation> done;        // already, as the design says; without time and number
    std::vector<SetUp> set_ups;
    std::vector<GlueUp> glue_ups;  // that are left
    GlueFacts glue;
    WorkSums sums;
    std::vector<Number> numbers;  // what machines are asked for, against what they take
};

}  // namespace rodwright
