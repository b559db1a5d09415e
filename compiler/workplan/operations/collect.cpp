#include "compiler/workplan/operations/collect.hpp"

#include <iterator>

#include "compiler/workplan/operations/definition_work.hpp"
#include "compiler/workplan/operations/general_work.hpp"
#include "compiler/workplan/operations/part_groups.hpp"

namespace rodwright {
std::vector<WorkItem> collect_work(const Piece& piece, const WorkData& data,
                                   const std::vector<GlueUp>& glue_ups, Diagnostics& diagnostics) {
    std::vector<WorkItem> items = general_work(piece, data, glue_ups);
    std::ranges::move(definition_work(piece, data, diagnostics), std::back_inserter(items));
    for (WorkItem& item : items) {
        item.operation.parts = part_list(item.parts);
        item.operation.kinds = kinds_of(piece, item.parts);
    }
    return items;
}

}  // namespace rodwright
