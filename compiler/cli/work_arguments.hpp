// The words of the command line that say who works, and when.
#pragma once

#include <CLI/App.hpp>
#include <optional>
#include <string>

#include "compiler/cli/design_arguments.hpp"
#include "compiler/workplan/plan_work.hpp"

namespace rodwright {

struct WorkArguments {
    int workers = 0;  // 0: as the shop has it
    std::string day;  // empty: as the shop has it
    bool in_stages = false;
};

void add_work_options(CLI::App& command, WorkArguments& arguments);

struct WorkSetting {
    WorkData data;
    WorkOptions options;
};

// The shop and the rules beside the design, and what the command line says. Empty where a file or a word is
// not as it should be; the reason is in `diagnostics`.
std::optional<WorkSetting> work_setting(const DesignArguments& design, const WorkArguments& arguments,
                                        SourceManager& sources, Diagnostics& diagnostics);

}  // namespace rodwright
