// What evaluation makes of a design: its parts with a number for every unknown face, and its lines with
// values. Placement solves the equations; the graph is built from the rest.
#pragma once

#include <array>
#include <deque>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "compiler/evaluate/evaluator.hpp"
#include "compiler/evaluate/glued_up.hpp"
#include "compiler/evaluate/linear.hpp"
#include "compiler/evaluate/scope.hpp"
#include "compiler/geometry/geometry.hpp"
#include "compiler/quantity/format.hpp"

namespace rodwright {

// -1: the part is not handed along that axis, or a reference does not say; 0 the written (left, front,
// bottom) copy; 1 its mirror image.
using Hands = std::array<std::int8_t, 3>;
inline constexpr Hands no_hands = {-1, -1, -1};

// An envelope with parts in it: the piece, or a placed assembly.
struct Container {
    std::string name;  // "" for the piece, "till" or "chest/till" for an assembly
    Container* parent = nullptr;
    Unknown first{};  // six unknowns, in the order of Face; the piece's near faces are zero
    Scope* scope = nullptr;
    std::map<std::string, std::size_t, std::less<>> parts;  // index in Statements::declarations
    std::map<std::string, Container*, std::less<>> assemblies;
    std::optional<Rational> opens;  // how far it comes out to the front, mm; what stays where it is has none
    Span where;                     // its name
    Span body;                      // its lines
};

// A size that is taken from the work and not from the drawing: the part is cut over it and marked in place.
struct TakenSize {
    Axis axis{};
    std::optional<Rational> over;  // as the design says
    Span where;
};

struct PartDeclaration {
    std::string name;
    Syntax syntax;
    Container* container = nullptr;
    std::array<bool, 3> handed{};
    bool row = false;
    long count = 1;
    bool fit = false;  // the count is the unknown
    std::string wood;
    std::optional<Axis> grain;
    std::optional<Axis> thick;
    std::optional<GluedUp> glued;
    std::vector<std::pair<Face, Span>> shown;  // faces that are seen, where the design says it
    std::vector<TakenSize> taken;
    std::vector<std::size_t> instances;  // row by row; in each the copies, near hands first
    Span where;

    std::size_t copies() const;  // in one row place: 1, 2, 4 or 8
};

struct Instance {
    std::string name;
    std::size_t declaration = 0;
    Hands hands = no_hands;
    long row = 0;            // from one; 0 where the part is not a row
    std::size_t master = 0;  // the instance that was written: this one, or the one it mirrors
    Unknown first{};         // six unknowns of a master, in the order of Face
    Scope* scope = nullptr;  // of a master: where its body is evaluated
};

// What a row may leave unknown. Rows are laid out for the written copies.
struct Row {
    Syntax syntax;
    std::size_t declaration = 0;
    Axis axis{};
    Unknown gap{};
    Unknown ends{};
    Scope* scope = nullptr;
    bool wanted_gap = false;
};

struct Equation {
    LinearEquation sum;  // is zero
    Span where;
};

// A reference to a part, with what it leaves open.
struct PartPattern {
    std::size_t declaration = 0;
    Hands hands = no_hands;
    std::optional<long> row;
    std::optional<Face> face;
    Span where;
};

struct JoinStatement {
    Syntax syntax;
    bool fastening = false;
    std::vector<PartPattern> first;
    std::vector<PartPattern> second;
    Syntax call;  // a call node
    Scope* scope = nullptr;
};

struct ShapeStatement {
    Syntax syntax;  // an apply node
    std::size_t instance = 0;
    Scope* scope = nullptr;
};

struct LoadStatement {
    Quantity force;
    PartPattern part;
    std::string place;
    Span where;
};

// `use seat for 2 on seat`
struct UseStatement {
    std::string what;
    std::string detail;  // empty where there is none
    long people = 1;
    std::vector<PartPattern> on;
    Span where;
};

// Parts that are to come out of the same wood.
struct MatchStatement {
    std::vector<PartPattern> parts;
    NodeKind how{};  // from_one_board, in_sequence or as_book
    Span where;
};

// `made leg { wide = 1-47/64" }`: a part that is there, and what it measures.
struct MadeStatement {
    PartPattern part;
    std::array<std::optional<Rational>, 3> size;  // by axis
    std::array<Span, 3> where_size;
    Span where;
};

// `done mortise_and_tenon.cut_mortise on leg`, one step of the line.
struct DoneStatement {
    std::string work;  // of a joint or shape; empty: of any, or of none
    std::string step;
    std::vector<PartPattern> on;  // empty: on all
    Span where;
};

struct AcceptStatement {
    std::string code;             // of a diagnostic, as written in codes.def
    std::vector<PartPattern> on;  // empty: wherever it is found
    std::string because;
    Span where;
};

// The air that the piece will stand in, and the wood when it is made.
struct ClimateStatement {
    Rational driest;   // relative humidity, 0 to 1
    Rational dampest;  // the same, not below `driest`
    Rational kelvin;
    std::optional<Rational> made_at;  // moisture content of the wood, 0 to 1
    Span where;
};

struct WoodStatement {
    std::string name;
    std::string species;
    std::string cut;
    Span where;
    Span species_span;
};

// A reference took one copy of a row for all of that hand; placement checks that they agree.
struct AssumedSame {
    PartPattern copies;
    std::string name;  // of a face or a size
    Syntax at;
};

struct Statements {
    std::string name;
    LengthStyle style;
    std::deque<Scope> scopes;
    std::deque<std::unique_ptr<References>> references;  // what the scopes look up faces with
    std::deque<Container> containers;                    // the piece first
    std::vector<PartDeclaration> declarations;
    std::vector<Instance> instances;
    std::vector<Equation> equations;
    std::vector<Span> failed_lines;  // that have no value, already reported: what they place stays open
    std::vector<Row> rows;
    std::vector<JoinStatement> joins;
    std::vector<ShapeStatement> shapes;
    std::vector<LoadStatement> loads;
    std::vector<UseStatement> uses;
    std::vector<MatchStatement> matches;
    std::vector<MadeStatement> made;
    std::vector<DoneStatement> done;
    std::vector<AcceptStatement> accepts;
    std::optional<ClimateStatement> climate;
    std::vector<WoodStatement> woods;
    std::vector<std::pair<std::string, long>> finishes;
    Syntax glue;  // its name; empty: the usual one
    std::vector<std::pair<Syntax, Scope*>> requirements;
    std::vector<std::pair<std::string, Syntax>> params;
    std::vector<AssumedSame> assumptions;
    // Where an assumption was made, of which declaration and hands: lines of rows make the same one many
    // times.
    std::set<std::tuple<FileId, NodeId, std::size_t, Hands>> assumed;
    std::size_t unknowns = 0;

    // The coordinate of a face, the extent along an axis, as linear in the unknowns.
    Linear face(const Container& container, Face face) const;
    Linear face(std::size_t instance, Face face) const;
};

// The rows whose count is to be found, by container and part, and what has been found so far.
using RowKey = std::pair<std::string, std::string>;
using RowCounts = std::map<RowKey, long>;

inline RowKey row_key(const PartDeclaration& part) {
    return {part.container->name, part.name};
}

}  // namespace rodwright
