#include <fmt/format.h>

#include "backends/steps/writers.hpp"
#include "backends/work_words.hpp"
#include "compiler/workplan/duration.hpp"

namespace rodwright {
namespace {

class StepsWriter {
  public:
    StepsWriter(const Piece& piece, const WorkPlan& plan) : piece_(piece), plan_(plan) {}

    std::string write() {
        text_ = fmt::format("# {}: order of work\n\n**Caution.** {}\n\n", markdown_text(plan_.title),
                            markdown_text(plan_.caution));
        for (const std::string& sentence : sums_words(plan_)) text_ += markdown_text(sentence) + "\n";
        if (!plan_.done.empty()) write_done();
        for (std::size_t i = 0; i < plan_.operations.size(); ++i) {
            if (i == 0 || plan_.operations[i].stage != plan_.operations[i - 1].stage)
                text_ += fmt::format("\n## {}\n\n", markdown_text(stage_heading(plan_, i)));
            write_step(i);
        }
        if (!plan_.set_ups.empty()) write_set_ups();
        return std::move(text_);
    }

  private:
    void line(const std::string& words) { text_ += fmt::format("  - {}\n", markdown_text(words)); }

    void write_done() {
        text_ += "\n## Done\n\n";
        for (const Operation& step : plan_.done)
            text_ += fmt::format("- [x] {} ({})\n", markdown_text(operation_title(step)),
                                 markdown_text(joined(operation_parts(piece_, step))));
    }

    void write_step(std::size_t number) {
        const Operation& step = plan_.operations[number];
        text_ += fmt::format("- [ ] **{}. {}** ({})\n", number + 1, markdown_text(operation_title(step)),
                             markdown_text(joined(operation_parts(piece_, step))));
        for (const Phrase& words : step.text) line(read_out(words, piece_.style));
        if (!step.machine.empty()) line(machine_line(step));
        for (const WorkReason& reason : step.after) {
            if (reason.shown) line(reason_words(reason));
        }
        if (const std::string caution = read_out(step.caution, piece_.style); !caution.empty())
            text_ += fmt::format("  - **Caution:** {}\n", markdown_text(caution));
        line(capitalised(time_words(step)) + ".");
    }

    std::string machine_line(const Operation& step) const {
        std::string words =
            capitalised(machine_words(step.machine, step.cutter, step.settings, piece_.style));
        if (step.set_up)
            words +=
                fmt::format(" (set-up {}{})", *step.set_up + 1, step.time.sets_up ? "" : ", as it stands");
        return words;
    }

    std::string reason_words(const WorkReason& reason) const {
        return fmt::format("After step {}: {}.", reason.after + 1, read_out(reason.because, piece_.style));
    }

    void write_set_ups() {
        text_ +=
            "\n## Set-ups\n\n| no. | machine and cutter | setting | worked out | steps "
            "|\n|---:|---|---|---|---|\n";
        for (std::size_t i = 0; i < plan_.set_ups.size(); ++i) {
            const SetUp& set_up = plan_.set_ups[i];
            std::vector<std::string> steps;
            for (const std::size_t step : set_up.operations) steps.push_back(std::to_string(step + 1));
            text_ += fmt::format(
                "| {} | {} | {} | {} | {} |\n", i + 1,
                markdown_text(capitalised(machine_words(set_up.machine, set_up.cutter, {}, piece_.style))),
                markdown_text(set_up_words(plan_, set_up, piece_.style)),
                markdown_text(joined(arithmetic_words(set_up.settings, piece_.style), "; ")), joined(steps));
        }
    }

    const Piece& piece_;
    const WorkPlan& plan_;
    std::string text_;
};

}  // namespace

std::string steps_markdown(const Piece& piece, const WorkPlan& plan) {
    return StepsWriter(piece, plan).write();
}

}  // namespace rodwright
