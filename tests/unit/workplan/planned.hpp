// A piece's work planned without its solids, for tests of the plan.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "compiler/workplan/plan_work.hpp"

namespace rodwright::testing {

inline WorkPlan planned(const Piece& piece, const WorkData& data = embedded_work_data()) {
    Diagnostics diagnostics;
    std::optional<WorkPlan> plan = plan_work(piece, data, std::nullopt, {}, diagnostics);
    REQUIRE(plan);
    CHECK(diagnostics.list().empty());
    return std::move(*plan);
}

inline std::string text_of(const Operation& operation) {
    std::string text;
    for (const Phrase& line : operation.text) text += read_out(line, LengthStyle{}) + "\n";
    return text;
}

// The place of an operation that must be there once.
inline std::size_t place(const WorkPlan& plan, const std::string& work, const std::string& name) {
    CAPTURE(work);
    CAPTURE(name);
    const auto fits = [&](const Operation& each) { return each.work == work && each.name == name; };
    REQUIRE(std::ranges::count_if(plan.operations, fits) == 1);
    return static_cast<std::size_t>(std::ranges::find_if(plan.operations, fits) - plan.operations.begin());
}

inline std::size_t count_of(const WorkPlan& plan, const std::string& name) {
    return static_cast<std::size_t>(std::ranges::count(plan.operations, name, &Operation::name));
}

}  // namespace rodwright::testing
