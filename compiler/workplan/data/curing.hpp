// How long glues and finishes leave time and how long they take: stdlib/data/glues.yaml.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/quantity/rational.hpp"

namespace rodwright {

// Seconds.
struct Glue {
    std::string name;  // "yellow_PVA"
    Rational open;     // from the first glue to the last clamp
    Rational clamp;    // until the clamps may come off
    Rational cure;     // until the joint may be stressed, or its seam planed
};

struct Drying {
    Rational recoat;  // until the next coat, and until it may be handled
    Rational cure;    // until it is hard
};

struct Curing {
    Glue glue;  // the usual one
    std::map<std::string, Glue> glues;
    Rational spread;  // for the glue of one joint and closing it
    std::map<std::string, Drying> finishes;
    Drying usual_finish;

    const Drying& finish(const std::string& name) const;
    // With the glue of that name as the one that is used. Empty if there is none such.
    std::optional<Curing> with_glue(const std::string& name) const;
};

// Empty, with Code::bad_data and the like in `diagnostics`, if the file is not as it should be.
std::optional<Curing> read_curing(const SourceManager& sources, FileId file, Diagnostics& diagnostics);

}  // namespace rodwright
