#include "tests/unit/rack/rack_text.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/stock/rack/read_rack.hpp"

namespace rodwright::testing {

const WoodTable& few_woods() {
    const auto wood = [](const char* key, bool sheet) {
        return WoodSpecies{key, key, 600, "#d9c39a", std::nullopt, sheet, "N"};
    };
    static const WoodTable woods({wood("white_ash", false), wood("cherry", false), wood("white_oak", false),
                                  wood("birch_plywood", true), wood("mdf", true)});
    return woods;
}

RackText::RackText(std::string text) {
    rack = read_rack(sources, sources.add("rack.yaml", std::move(text)), few_woods(), diagnostics);
}

std::string RackText::report() const {
    std::string all;
    for (const Diagnostic& diagnostic : diagnostics.sorted()) {
        const Position at = sources.position(diagnostic.primary.file, diagnostic.primary.begin);
        all += fmt::format("{}{}:{} {} {} | {}", all.empty() ? "" : "\n", at.line, at.column,
                           info(diagnostic.code).code, diagnostic.message, diagnostic.help);
    }
    return all;
}

Rack rack_of(const std::string& text) {
    CAPTURE(text);
    RackText read(text);
    REQUIRE(read.report() == "");
    REQUIRE(read.rack);
    return *read.rack;
}

}  // namespace rodwright::testing
