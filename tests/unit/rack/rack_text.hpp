// A rack's file read from text, for tests.
#pragma once

#include <optional>
#include <string>

#include "compiler/data/woods.hpp"
#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/stock/rack/rack.hpp"

namespace rodwright::testing {

// white_ash, cherry and white_oak in boards; birch_plywood and mdf in sheets.
const WoodTable& few_woods();

struct RackText {
    explicit RackText(std::string text);

    // The one diagnostic as `line:column CODE message | help`, or all of them, a line each.
    std::string report() const;

    SourceManager sources;
    Diagnostics diagnostics;
    std::optional<Rack> rack;
};

// The rack of a text that has to be right; fails the test with the report if it is not.
Rack rack_of(const std::string& text);

}  // namespace rodwright::testing
