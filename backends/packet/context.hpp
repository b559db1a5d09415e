// What every sheet of one packet is made from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backends/drawing/fonts.hpp"
#include "backends/drawing/projection.hpp"
#include "backends/drawing/shaded.hpp"
#include "backends/drawing/sheet_format.hpp"
#include "backends/drawing/title_block.hpp"
#include "backends/packet/figure.hpp"
#include "compiler/plugin/backend.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright::packet {

struct Context {
    const BackendInput& input;
    Piece piece;  // as its lengths are shown here: in the unit that the run was asked for
    const drawing::Fonts& fonts;
    const SolidKernel& kernel;
    drawing::SheetFormat format;
    drawing::ProjectionMethod projection{};
    std::vector<PlacedSolid> placed;                   // every part that has a solid
    std::vector<std::vector<Triangle>> triangles;      // of each kind, empty where there is no solid
    std::vector<std::string> findings;                 // a sentence each, worst first
    std::optional<LengthStyle> beside = std::nullopt;  // the other unit, where drawings show both
    std::string number = "";                           // of the drawings, for the title block
    std::string revision = "";

    FigureStyle figures() const { return {piece.style, beside}; }
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

// What leads to the sheet with that number.
std::string sheet_anchor(std::size_t number);

// The kinds that mirror that one.
std::vector<KindId> mirrors_of(const Piece& piece, KindId kind);

// "keepers_table.rod:34"; empty where the text of the design is not at hand.
std::string source_of(const Context& context, const Span& where);

drawing::Colour kind_colour(const Piece& piece, const Kind& kind);

}  // namespace rodwright::packet
