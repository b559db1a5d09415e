#include "compiler/work/work_data.hpp"

#include <stdexcept>

#include "compiler/evaluate/data_files.hpp"

namespace rodwright {

std::optional<WorkData> read_work_data(const World& world, const LibraryFiles& library,
                                       const std::string& design, SourceManager& sources,
                                       Diagnostics& diagnostics) {
    std::optional<Shop> shop = shop_of(world, library, design, sources, diagnostics);
    const FileId table = add_file(library, "data/operations.yaml", sources, diagnostics);
    const FileId rules = add_file(library, "data/order.yaml", sources, diagnostics);
    const FileId glues = add_file(library, "data/glues.yaml", sources, diagnostics);
    if (!shop || table == FileId::none || rules == FileId::none || glues == FileId::none) return std::nullopt;
    std::optional<OperationTable> operations = read_operations(sources, table, diagnostics);
    std::optional<Curing> curing = read_curing(sources, glues, diagnostics);
    if (!operations || !curing) return std::nullopt;
    std::optional<OrderRules> order = read_order_rules({}, *operations, sources, rules, diagnostics);
    const std::optional<std::string> own = file_beside(world, design, "order.yaml");
    if (order && own) {
        const FileId file = add_file(world, *own, sources, diagnostics);
        if (file == FileId::none) return std::nullopt;
        order = read_order_rules(std::move(*order), *operations, sources, file, diagnostics);
    }
    if (!order) return std::nullopt;
    return WorkData{std::move(*shop), std::move(*operations), std::move(*order), std::move(*curing)};
}

static WorkData read_embedded() {
    SourceManager sources;
    Diagnostics diagnostics;
    const MemoryWorld nothing;
    std::optional<WorkData> data =
        read_work_data(nothing, LibraryFiles(nothing, std::nullopt), "", sources, diagnostics);
    if (!data) throw std::logic_error("the library's work data: " + diagnostics.list()[0].message);
    return std::move(*data);
}

const WorkData& embedded_work_data() {
    static const WorkData data = read_embedded();
    return data;
}

}  // namespace rodwright
