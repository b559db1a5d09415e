#include "tests/unit/limits/refused.hpp"

#include <fmt/format.h>

namespace rodwright::testing {

std::string repeated(const std::string& text, std::size_t times) {
    std::string all;
    for (std::size_t i = 0; i < times; ++i) all += text;
    return all;
}

std::string first_of(Code code, const Diagnostics& diagnostics, const SourceManager& sources) {
    for (const Diagnostic& diagnostic : diagnostics.list()) {
        if (diagnostic.code != code) continue;
        const Position at = sources.position(diagnostic.primary.file, diagnostic.primary.begin);
        return fmt::format("{}:{} {}", at.line, at.column, diagnostic.message);
    }
    FAIL("the limit was not reported");
    return "";
}

std::string passed_limit(const CompiledDesign& design) {
    CAPTURE(design.report());
    return first_of(Code::too_large, design.compilation().diagnostics, *design.compilation().sources);
}

}  // namespace rodwright::testing
