// The order of work as a value: every piece of work once, in an order that no reason speaks against.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "backends/steps/order_rules.hpp"
#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

// The parts of one kind that a step works on.
struct StepPart {
    KindId kind = KindId::none;
    std::string letter;
    std::string name;
    std::size_t count = 0;
};

// Why a step comes after another.
struct StepReason {
    std::size_t after = 0;  // index in StepList::steps, smaller than the step's own
    std::string because;    // may be empty: then the order is plain from the work itself
    bool shown = false;     // whether it is worth a line to someone who reads the steps in order
};

struct Step {
    Stage stage{};
    std::string work;  // "mortise_and_tenon", a shape's name, or empty for general work
    std::string name;  // "cut_mortise"
    std::string text;
    std::vector<StepPart> parts;  // in the order of the kinds
    bool all_parts = false;       // of the piece
    std::string machine;          // may be empty
    std::vector<std::pair<std::string, std::string>> settings;
    bool test_piece = false;
    std::string caution;  // may be empty
    std::vector<StepReason> after;
};

struct StageNote {
    Stage stage{};
    std::string because;  // why it comes after the stage before; may be empty
};

struct StepList {
    std::string title;
    std::string caution;            // once, before all steps
    std::vector<StageNote> stages;  // those that have steps, in order
    std::vector<Step> steps;        // step number = index + 1
};

// "Mortise and tenon: cut mortise"
std::string step_title(const Step& step);
// "A leg x 2, B rail x 1", or "all parts"
std::string step_parts(const Step& step);
// "table saw; height 1/4", stop 1-1/8"; empty if the step has no machine
std::string step_setting(const Step& step);

// Empty, with Code::order_cycle naming the steps, if they wait for each other in a circle. The second form
// uses the rules that come with the compiler.
std::optional<StepList> make_steps(const Piece& piece, const OrderRules& rules, Diagnostics& diagnostics);
std::optional<StepList> make_steps(const Piece& piece, Diagnostics& diagnostics);

}  // namespace rodwright
