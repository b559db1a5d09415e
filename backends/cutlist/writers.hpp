// The cut list in each format it is written in. All end their last line.
#pragma once

#include <string>

#include "backends/cutlist/cut_list.hpp"

namespace rodwright {

// Columns under each other, for a terminal or a printer with one width of letters.
std::string cut_list_text(const CutList& list);
// CommonMark with tables.
std::string cut_list_markdown(const CutList& list);
// RFC 4180: CRLF, a header, quotes where needed. One record a part kind; one a piece of hardware.
std::string cut_list_csv(const CutList& list);
std::string hardware_csv(const CutList& list);
// Every size as {"exact": millimetres as a fraction, "mm": a number, "shown": as the piece shows it}.
std::string cut_list_json(const CutList& list);

}  // namespace rodwright
