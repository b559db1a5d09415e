// What every sheet of one packet is made from.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/fonts.hpp"
#include "backends/drawing/projection.hpp"
#include "backends/drawing/shaded.hpp"
#include "backends/drawing/sheet_format.hpp"
#include "backends/drawing/title_block.hpp"
#include "backends/steps/step_list.hpp"
#include "compiler/plugin/backend.hpp"

namespace rodwright::packet {

struct Context {
    const BackendInput& input;
    const Piece& piece;
    const drawing::Fonts& fonts;
    const SolidKernel& kernel;
    drawing::SheetFormat format;
    drawing::ProjectionMethod projection{};
    std::vector<PlacedSolid> placed;               // every part that has a solid
    std::vector<std::vector<Triangle>> triangles;  // of each kind, empty where there is no solid
    StepList steps;
    std::vector<std::string> findings;  // warnings, worst first
};

// A sheet and what its title block says; sheets are numbered when all of them are there.
struct Draft {
    drawing::Sheet sheet;
    drawing::TitleBlock block;
    std::string group;   // for the page list: "parts"
    std::string letter;  // of a part sheet
};

// A framed sheet with the block's fields that all sheets share; `subject` says what it shows.
Draft new_draft(const Context& context, std::string group, std::string subject);

// A length as figures on a drawing: no unit sign for millimetres, as ISO 129-1 asks; `~` where it is rounded.
std::string figure(const Rational& millimetres, const LengthStyle& style);

// The kinds that mirror that one.
std::vector<KindId> mirrors_of(const Piece& piece, KindId kind);

drawing::Colour kind_colour(const Piece& piece, const Kind& kind);

}  // namespace rodwright::packet
