#include "compiler/workplan/work_data.hpp"

#include <stdexcept>

#include "compiler/evaluate/data_files.hpp"

namespace rodwright {

namespace {

// The library's file, and the maker's own of the same name beside the design laid over it.
class Layers {
  public:
    Layers(const World& world, const LibraryFiles& library, const std::string& design, SourceManager& sources,
           Diagnostics& diagnostics)
        : world_(world), library_(library), design_(design), sources_(sources), diagnostics_(diagnostics) {}

    // `read` takes the value so far and a file, and is empty where the file is not as it should be.
    template <typename Value, typename Read>
    std::optional<Value> of(const std::string& name, const Read& read) {
        const FileId file = add_file(library_, "data/" + name, sources_, diagnostics_);
        if (file == FileId::none) return std::nullopt;
        std::optional<Value> value = read(Value{}, file);
        const std::optional<std::string> own = file_beside(world_, design_, name);
        if (!value || !own) return value;
        const FileId over = add_file(world_, *own, sources_, diagnostics_);
        if (over == FileId::none) return std::nullopt;
        return read(std::move(*value), over);
    }

  private:
    const World& world_;
    const LibraryFiles& library_;
    const std::string& design_;
    SourceManager& sources_;
    Diagnostics& diagnostics_;
};

}  // namespace

std::optional<WorkData> read_work_data(const World& world, const LibraryFiles& library,
                                       const std::string& design, SourceManager& sources,
                                       Diagnostics& diagnostics) {
    Layers layers(world, library, design, sources, diagnostics);
    std::optional<Shop> shop = shop_of(world, library, design, sources, diagnostics);
    std::optional<OperationTable> operations =
        layers.of<OperationTable>("operations.yaml", [&](OperationTable base, FileId file) {
            return read_operations(std::move(base), sources, file, diagnostics);
        });
    const FileId glues = add_file(library, "data/glues.yaml", sources, diagnostics);
    if (!shop || !operations || glues == FileId::none) return std::nullopt;
    std::optional<Curing> curing = read_curing(sources, glues, diagnostics);
    if (!curing) return std::nullopt;
    std::optional<OrderRules> order = layers.of<OrderRules>("order.yaml", [&](OrderRules base, FileId file) {
        return read_order_rules(std::move(base), *operations, sources, file, diagnostics);
    });
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
