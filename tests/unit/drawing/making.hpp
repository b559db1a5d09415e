// A piece with everything that its sheets are made from, kept for as long as sheets are made of it.
#pragma once

#include <doctest/doctest.h>

#include <map>
#include <string>

#include "backends/packet/make_context.hpp"
#include "backends/packet/sheets.hpp"
#include "compiler/workplan/plan_work.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"

namespace rodwright::testing {

struct Making {
    Piece piece;
    Diagnostics diagnostics;
    SourceManager sources;
    SolidStore solids{piece, diagnostics};
    BackendInput input{piece, sources, solids, {}};
    std::optional<drawing::Fonts> fonts = drawing::Fonts::load(diagnostics);

    std::optional<WorkPlan> work;

    explicit Making(Piece made) : piece(std::move(made)) {
        REQUIRE(fonts.has_value());
        REQUIRE(solids.kernel() != nullptr);
        work = plan_work(piece, embedded_work_data(), assembly_facts(piece, solids), {}, diagnostics);
        REQUIRE(work.has_value());
        input.work = &*work;
    }

    packet::Context context(const OptionValues& options) {
        std::optional<packet::Context> made =
            packet::make_context(input, options, *fonts, *solids.kernel(), diagnostics);
        REQUIRE(made.has_value());
        return std::move(*made);
    }
    std::vector<drawing::Sheet> sheets(const OptionValues& options) {
        const packet::Context made = context(options);
        return packet::packet_sheets(made, packet::templates(made));
    }
};

inline Piece example_piece(const std::string& name) {
    return compile_text(example_text(name)).piece();
}

// One for all tests of a run, so that what one has asked the kernel is known to the next. Nobody changes it.
inline Making& made_example(const std::string& name) {
    static std::map<std::string, Making> made;
    const auto found = made.find(name);
    return found != made.end() ? found->second : made.try_emplace(name, example_piece(name)).first->second;
}

}  // namespace rodwright::testing
