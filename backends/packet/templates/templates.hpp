// What is drawn at full size, to be laid on the wood: profiles, joints as they are set out, openings to rout
// through, strips with the stations of a row.
#pragma once

#include <string>
#include <vector>

#include "backends/packet/context.hpp"

namespace rodwright::packet {

struct Template {
    std::string name;        // "A1 leg"
    std::string file;        // "leg-A1", letters, digits and hyphens only
    drawing::Sheet drawing;  // in millimetres of the wood; the frame is around all of it
    drawing::Sheet caption;  // letter, name and notes, to stand over it
};
// The drawing with its caption over it.
drawing::Sheet whole(const Template& each);

// Those of a kind with a tapered or curved profile, one for each way that it is seen.
std::vector<Template> profile_templates(const Context& context);
// The end of the first member and the pocket in the second, for each distinct joint but fastenings.
std::vector<Template> joint_layouts(const Context& context);
// For pockets that a joint's needs say are cut with a router bit.
std::vector<Template> router_templates(const Context& context);
// For kinds that three or more others meet in the same way.
std::vector<Template> layout_strips(const Context& context);

std::vector<Template> templates(const Context& context);

// Sheets with all of them: small ones share a sheet, large ones are cut into tiles. Of a template that is
// longer than 4 m they say that it is in its SVG only.
std::vector<Draft> template_sheets(const Context& context, const std::vector<Template>& all);

// A drawing with letter (or none), name and notes for it; frames are set.
Template captioned(const Context& context, const std::string& letter, const std::string& name,
                   const std::vector<std::string>& notes, drawing::Sheet drawing, const std::string& file);

// "leg-A1": what a file may be called anywhere.
std::string file_name(const std::vector<std::string>& words);

// "A1 leg, B rail", and how many more where there are too many to name.
std::string few_of(const std::vector<std::string>& names);

// The letters of the kinds that mirror that one, for the note on a template: "Turned over: A2". Empty if none
// do.
std::vector<std::string> mirror_note(const Context& context, KindId kind);

}  // namespace rodwright::packet
