// Sheets that are filled with tables, one below another and on from sheet to sheet.
#pragma once

#include "backends/drawing/table.hpp"
#include "backends/packet/context.hpp"

namespace rodwright::packet {

struct TablePages {
    std::string group;                 // in the page list
    std::string title;                 // over the first table
    std::vector<std::string> preface;  // paragraphs under the title, on the first sheet
    std::vector<drawing::Table> tables;
};

// No sheet if there is no table.
std::vector<Draft> table_sheets(const Context& context, const TablePages& pages);

}  // namespace rodwright::packet
