// The sheets of a packet, each kind made by one function.
#pragma once

#include <span>
#include <vector>

#include "backends/packet/context.hpp"
#include "backends/packet/templates/templates.hpp"

namespace rodwright::packet {

Draft cover_picture(const Context& context);
// The rest of the cover; `others` are the sheets that follow it, already numbered.
void write_cover(Draft& cover, const Context& context, std::span<const Draft> others);
Draft arrangement_sheet(const Context& context);
// The piece cut across and cut along.
Draft section_sheet(const Context& context);
Draft taken_apart_sheet(const Context& context);
// One sheet for the kind and its mirror images; more where its table of sizes does not fit.
std::vector<Draft> part_sheets(const Context& context, KindId kind);
// Joints that are set out with the same numbers: they may differ in where they are, and in which hand they
// are of.
struct DistinctJoint {
    JointKindId kind{};  // the first of them
    std::vector<JointId> joints;
};
std::vector<DistinctJoint> distinct_joints(const Piece& piece);
Draft joint_sheet(const Context& context, const DistinctJoint& distinct);
std::vector<Draft> cut_list_sheets(const Context& context);
// None where no wood is planned.
std::vector<Draft> board_sheets(const Context& context);
std::vector<Draft> buying_sheets(const Context& context);
std::vector<Draft> step_sheets(const Context& context);
// None where no work is planned, these three.
std::vector<Draft> set_up_sheets(const Context& context);
// One of them, from 0: they take long to draw, and are drawn at the same time.
std::size_t glue_up_sheet_count(const Context& context);
Draft glue_up_sheet(const Context& context, std::size_t number);
std::vector<Draft> timeline_sheets(const Context& context);
// What the checks worked out. None where nothing was checked.
std::vector<Draft> number_sheets(const Context& context);

// All of them in order, numbered, with their title blocks drawn.
std::vector<drawing::Sheet> packet_sheets(const Context& context, const std::vector<Template>& templates);

}  // namespace rodwright::packet
