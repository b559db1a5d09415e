// Work that is done already, set aside from what is left.
#pragma once

#include <vector>

#include "compiler/workplan/operations/work_item.hpp"

namespace rodwright {

struct DoneWork {
    std::vector<WorkItem> left;
    std::vector<Operation> done;  // in the order of the items
};

// Work that is done on some of its parts is split in two. A glue-up is done where one line names all of its
// parts. Code::nothing_done where a line of the design names no work of these parts.
DoneWork set_aside_done(const Piece& piece, std::vector<WorkItem> items, Diagnostics& diagnostics);

}  // namespace rodwright
