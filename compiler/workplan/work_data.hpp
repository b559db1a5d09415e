// What the work plan knows of the trade: the library's data files, and the maker's own beside a design.
#pragma once

#include <optional>
#include <string>

#include "compiler/data/shop.hpp"
#include "compiler/workplan/data/curing.hpp"
#include "compiler/workplan/data/operation_table.hpp"
#include "compiler/workplan/data/order_rules.hpp"

namespace rodwright {

class World;
class LibraryFiles;

struct WorkData {
    Shop shop;
    OperationTable operations;
    OrderRules order;
    Curing curing;
};

// The library's, with `shop.yaml`, `operations.yaml` and `order.yaml` beside the design laid over them where
// they are. Empty, with the reason in `diagnostics`, if a file cannot be read or is not as it should be.
std::optional<WorkData> read_work_data(const World& world, const LibraryFiles& library,
                                       const std::string& design, SourceManager& sources,
                                       Diagnostics& diagnostics);

// The library's as it was built in.
const WorkData& embedded_work_data();

}  // namespace rodwright
