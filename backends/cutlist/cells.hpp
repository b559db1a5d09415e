// What the cut list's tables for people have in common.
#pragma once

#include <string>
#include <vector>

#include "backends/cutlist/cut_list.hpp"

namespace rodwright {

struct Column {
    std::string title;
    bool right = false;  // aligned to the right
};

using Cells = std::vector<std::string>;

// Rough sizes and boards have a column only where the list knows them.
std::vector<Column> cut_columns(const CutList& list);
Cells cut_cells(const CutRow& row, const CutList& list, const LengthStyle& style);
// `30 1/2" x 2 1/4" x 8/4`; several parts in one: `2 in 30 1/2" x ...`.
std::string rough_words(const RoughCut& rough, const LengthStyle& style);
const std::vector<Column>& hardware_columns();
Cells hardware_cells(const HardwareRow& row, const LengthStyle& style);
// The sentences that stand above the tables.
std::vector<std::string> cut_list_preface(const CutList& list);

// The double nearest to it; of two that are equally near the even one. mpq_class::get_d cuts off.
double nearest_double(const Rational& value);

}  // namespace rodwright
