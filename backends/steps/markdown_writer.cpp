#include <fmt/format.h>

#include "backends/steps/writers.hpp"
#include "backends/words.hpp"

namespace rodwright {
namespace {

std::string reason_line(const StepReason& reason) {
    return fmt::format("  - After step {}: {}.\n", reason.after + 1, markdown_text(reason.because));
}

std::string step_block(const Step& step, std::size_t number) {
    std::string text = fmt::format("- [ ] **{}. {}** ({})\n", number, markdown_text(step_title(step)),
                                   markdown_text(step_parts(step)));
    text += fmt::format("  - {}\n", markdown_text(step.text));
    if (!step.machine.empty())
        text += fmt::format("  - {}\n", markdown_text(capitalised(step_setting(step))));
    if (step.test_piece) text += "  - Try the setting on a spare first.\n";
    for (const StepReason& reason : step.after) {
        if (reason.shown) text += reason_line(reason);
    }
    if (!step.caution.empty()) text += fmt::format("  - **Caution:** {}\n", markdown_text(step.caution));
    return text;
}

}  // namespace

std::string steps_markdown(const StepList& list) {
    std::string text = fmt::format("# {}: order of work\n\n", markdown_text(list.title));
    text += fmt::format("**Caution.** {}\n", markdown_text(list.caution));
    auto stage = list.stages.begin();
    for (std::size_t i = 0; i < list.steps.size(); ++i) {
        if (i == 0 || list.steps[i].stage != list.steps[i - 1].stage) {
            text += fmt::format("\n## {}\n\n", stage_title(stage->stage));
            if (!stage->because.empty())
                text += fmt::format("{}.\n\n", capitalised("now, because " + markdown_text(stage->because)));
            ++stage;
        }
        text += step_block(list.steps[i], i + 1);
    }
    return text;
}

}  // namespace rodwright
