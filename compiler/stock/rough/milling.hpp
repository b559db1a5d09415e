// What sawing, flattening and planing take away, and what the machines can do: stdlib/data/milling.yaml, and
// the maker's own `milling.yaml` laid over it. Sources stand beside each value in the file.
//
// Lengths are millimetres, exact, none below zero.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "compiler/data/woods.hpp"
#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/quantity/rational.hpp"

namespace rodwright {

// A thickness that boards are sawn and sold in.
struct ThicknessClass {
    std::string name;                 // "4/4"
    Rational rough;                   // as sawn and dried
    Rational surfaced;                // what a flat hardwood board gives, both faces surfaced
    std::optional<Rational> dressed;  // of softwood sold dressed and dry; empty: not sold so
    bool usual = true;                // false: few dealers have it, so no part is planned for it
};

struct Allowances {
    Rational end;              // at each end of a part
    Rational edge;             // at each long edge
    Rational faces;            // for both faces of a flat board together
    Rational resawn_face;      // for a face that comes from the resaw
    Rational template_line;    // outside of a sawn curve that a template trims
    Rational long_curve;       // outside of a sawn curve that is planed or sanded
    Rational taper_band_saw;   // outside of a taper
    Rational taper_table_saw;  // the same
    Rational turning_length;   // over a turned part, both ends together
    Rational turning_width;    // over its diameter
};

// The saws that cut when nobody says otherwise; each is a key of MillingData::kerfs.
struct Saws {
    std::string rip;
    std::string crosscut;
    std::string resaw;
    std::string sheets;  // breaks large sheets down
};

// What pieces a machine takes.
struct Jointer {
    Rational shortest;
    Rational thinnest;
    Rational widest;
};

struct Planer : Jointer {
    bool snipes = false;
    Rational snipe;  // length that is too thin at each end, where it snipes
};

struct SawLimits {
    Rational shortest_rip;      // table saw
    Rational narrowest_rip;     // table saw, blade to fence: less wants a push block
    Rational widest_rip;        // the same
    Rational longest_crosscut;  // table saw with a sled: across the part
    Rational widest_mitre_saw;  // across the part
    Rational shortest_mitre_saw;
    Rational tallest_resaw;  // width of a board that stands on edge at the band saw
    Rational sheet_length;   // a sheet longer or wider than this is broken down before the table saw
    Rational sheet_width;
};

// Panels glued from boards side by side (staves).
struct PanelLimits {
    Rational narrowest_stave;  // in the finished panel
    Rational widest_stave;     // the same
    Rational glued_edge;       // for jointing each long edge of a stave
    Rational length;           // over the finished panel, both ends together
    Rational width;            // over the finished panel, both edges together
};

// What is kept; anything smaller is waste.
struct OffcutLimits {
    Rational length;
    Rational width;
    Rational sheet_length;
    Rational sheet_width;

    bool keeps(bool sheet, const Rational& piece_length, const Rational& piece_width) const {
        return piece_length >= (sheet ? sheet_length : length) &&
               piece_width >= (sheet ? sheet_width : width);
    }
};

// Shares to add where lumber is bought by the board foot: bought = net x (1 + share). 0.3 is 30 %.
struct Buying {
    std::string grade;                        // key of `grades` that is bought when nobody says otherwise
    std::map<std::string, Rational> grades;   // "fas"
    std::map<std::string, Rational> species;  // further, by key of woods.yaml
    Rational sheet_trim;                      // off each factory edge of a sheet, a length

    Rational share(const std::string& of_species) const;
};

struct MillingData {
    std::vector<ThicknessClass> classes;  // thinnest first
    Allowances allowances;
    std::map<std::string, Rational> kerfs;  // by saw: "table_saw"
    Saws saws;
    Jointer jointer;
    Planer planer;
    SawLimits saw_limits;
    PanelLimits panels;
    OffcutLimits offcuts;
    Buying buying;

    // The kerf of a saw that `saws` names.
    const Rational& kerf(const std::string& saw) const { return kerfs.at(saw); }
    // The class of that name, or null.
    const ThicknessClass* find_class(const std::string& name) const;
    // The thinnest usual class that gives a flat part of that finished thickness, or null: thicker than any.
    const ThicknessClass* class_for(const Rational& finished) const;
    // What no piece may be shorter than to go over the jointer and through the planer.
    const Rational& shortest_milled() const;
};

// The library's file: every value is there. Species are keys of `woods`. Empty, with Code::bad_data and the
// like in `diagnostics`, if the file is not as it should be.
std::optional<MillingData> read_milling(const SourceManager& sources, FileId file, const WoodTable& woods,
                                        Diagnostics& diagnostics);

// `base` with the values that the maker's file names in place of its own. The file may add thickness classes,
// saws, grades and species. Empty as above.
std::optional<MillingData> overlay_milling(MillingData base, const SourceManager& sources, FileId file,
                                           const WoodTable& woods, Diagnostics& diagnostics);

}  // namespace rodwright
