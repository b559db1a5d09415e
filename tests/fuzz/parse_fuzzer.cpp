// Any bytes as a .rod: read them, and if they are without a mistake, print them, read that and print it
// again.
#include <cstdio>
#include <cstdlib>
#include <string>

#include "grammar/parse.hpp"
#include "grammar/print.hpp"

namespace {

void require(bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "does not hold: %s\n", what);
    std::abort();
}

struct Read {
    explicit Read(std::string text) : file(sources.add("fuzz.rod", std::move(text))) {
        tree = rodwright::parse(sources, file, diagnostics);
    }
    rodwright::SourceManager sources;
    rodwright::Diagnostics diagnostics;
    rodwright::FileId file;
    rodwright::Tree tree;
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    const Read first(std::string(reinterpret_cast<const char*>(data), size));
    const std::string printed = rodwright::print(first.tree);
    if (!first.diagnostics.ok()) return 0;
    const Read second(printed);
    require(second.diagnostics.ok(), "printed text is read without an error");
    require(second.tree.nodes().size() == first.tree.nodes().size(), "printed text has the same nodes");
    require(second.tree.comments().size() == first.tree.comments().size(),
            "printed text has the same comments");
    require(rodwright::print(second.tree) == printed, "printed text is printed as it is");
    return 0;
}
