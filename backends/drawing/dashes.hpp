// A line cut into dashes.
#pragma once

#include <vector>

#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

// The dashes of a line: dash and gap in turn after `pattern` (mm), stretched or shrunk a little so that
// the first and the last dash end where the line does (ISO 128-2: dashes meet at corners). A line too short
// for two dashes is one.
std::vector<std::vector<Point>> dashes_of(const std::vector<Point>& points,
                                          const std::vector<double>& pattern);
std::vector<Arc> dashes_of(const Arc& arc, const std::vector<double>& pattern);

}  // namespace rodwright::drawing
