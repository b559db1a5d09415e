// Any bytes as a design: from text to graph with the library's own joints, shapes and data.
#include <cstdio>
#include <cstdlib>
#include <string>

#include "compiler/compile.hpp"
#include "compiler/diagnostics/render.hpp"

namespace {

void require(bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "does not hold: %s\n", what);
    std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    const rodwright::MemoryWorld world({{"fuzz.rod", text}});
    rodwright::CompileOptions options;
    options.path = "fuzz.rod";
    const rodwright::Compilation compiled = rodwright::compile(world, options);
    require(compiled.piece.has_value() || !compiled.diagnostics.ok(), "there is a piece or an error");
    for (const rodwright::Diagnostic& diagnostic : compiled.diagnostics.sorted()) {
        require(!diagnostic.message.empty(), "a diagnostic says something");
        rodwright::render(diagnostic, *compiled.sources, false);
    }
    return 0;
}
