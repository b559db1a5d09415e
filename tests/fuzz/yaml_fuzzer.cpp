// Any bytes as a data file: as plain YAML, as a table of woods, as a shop and as milling data.
#include <string>

#include "compiler/data/shop.hpp"
#include "compiler/data/woods.hpp"
#include "compiler/data/yaml_reader.hpp"
#include "compiler/stock/rough/milling.hpp"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    rodwright::SourceManager sources;
    const rodwright::FileId file =
        sources.add("fuzz.yaml", std::string(reinterpret_cast<const char*>(data), size));
    rodwright::Diagnostics diagnostics;
    rodwright::read_yaml(sources, file, diagnostics);
    rodwright::read_woods(sources, file, diagnostics);
    rodwright::read_shop(sources, file, diagnostics);
    const rodwright::WoodTable woods({});
    rodwright::read_milling(sources, file, woods, diagnostics);
    rodwright::overlay_milling({}, sources, file, woods, diagnostics);
    return 0;
}
