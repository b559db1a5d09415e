#include "compiler/work/operations/tooling.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/words.hpp"
#include "compiler/work/operations/guide_bush.hpp"

namespace rodwright {
namespace {

using Cutter = ToolNeed::Alternative;

constexpr std::string_view hand = "hand";

const Quantity* size_of_cutter(const Cutter& cutter) {
    const auto first = std::ranges::find(cutter.sizes, "", &std::pair<std::string, Quantity>::first);
    return first == cutter.sizes.end() || !first->second.is_length() ? nullptr : &first->second;
}

bool holds(const Machine& machine, const Cutter& cutter) {
    return std::ranges::find(machine.holds, cutter.tool) != machine.holds.end();
}

// The first of the definition's needs that goes into the machine.
std::optional<Cutter> held_by(const Machine& machine, const Work& work) {
    for (const ToolNeed& need : work.needs) {
        for (const Cutter& cutter : need.alternatives) {
            if (holds(machine, cutter)) return cutter;
        }
    }
    return std::nullopt;
}

std::string step_words(const Operation& operation) {
    return fmt::format("{}: {}", plain_words(operation.work), plain_words(operation.name));
}

class Tooling {
  public:
    Tooling(Operation& operation, const Work& work, const StepTemplate& step, const Shop& shop,
            const LengthStyle& style, Diagnostics& diagnostics)
        : operation_(operation),
          work_(work),
          step_(step),
          shop_(shop),
          style_(style),
          diagnostics_(diagnostics) {}

    void choose() {
        if (step_.machine.empty()) return;
        const Machine* machine = shop_.machine(step_.machine);
        if (machine == nullptr) machine = another_machine();
        if (machine == nullptr) return;
        operation_.machine = machine->name;
        const bool as_asked = machine->name == step_.machine;
        operation_.cutter = as_asked && step_.cutter ? step_.cutter : held_by(*machine, work_);
        if (operation_.cutter) fit_cutter(*operation_.cutter);
        if (operation_.cutter) add_bush(*machine, *operation_.cutter);
    }

  private:
    // Null where there is only the bench. Settings are those of the machine that is not there.
    const Machine* another_machine() {
        operation_.settings.clear();
        const std::vector<OtherWay>& ways = shop_.instead_of(step_.machine);
        const auto way = std::ranges::find_if(ways, [&](const OtherWay& other) {
            return other.use == hand || shop_.machine(other.use) != nullptr;
        });
        Diagnostic found = diagnose(
            Code::no_machine, step_.where,
            fmt::format("{}: the shop has no {}", step_words(operation_), plain_words(step_.machine)));
        if (way == ways.end()) {
            diagnostics_.add(std::move(found).hint("add it to shop.yaml, or choose another joint"));
            return nullptr;
        }
        operation_.text.emplace_back(fmt::format("No {} here. {}", plain_words(step_.machine), way->text));
        diagnostics_.add(std::move(found).hint(way->text));
        return way->use == hand ? nullptr : shop_.machine(way->use);
    }

    // A bit that runs in a bush can follow a template.
    void add_bush(const Machine& machine, const Cutter& cutter) {
        const bool takes_bush = std::ranges::find(machine.holds, "guide_bush") != machine.holds.end();
        const Quantity* size = size_of_cutter(cutter);
        const bool in_template = std::ranges::any_of(work_.needs, [&](const ToolNeed& need) {
            const Cutter* bit = template_bit(need);
            return bit != nullptr && bit->tool == cutter.tool;
        });
        if (!takes_bush || size == nullptr || !in_template) return;
        const std::optional<Rational> bush = bush_for(shop_, size->value, style_.unit);
        if (!bush) return;
        Phrase line("Along a template: with the guide bush of ");
        line << Quantity::length(*bush) << "; the packet has its opening at full size.";
        operation_.text.push_back(std::move(line));
    }

    void fit_cutter(Cutter& cutter) {
        const Quantity* size = size_of_cutter(cutter);
        if (size == nullptr) return;
        const std::optional<Rational> has = shop_.cutter_for(cutter.tool, size->value, style_.unit);
        if (has && *has == size->value) return;
        const std::string wanted = format_quantity(*size, style_) + " " + plain_words(cutter.tool);
        if (has) {
            say_nearest(cutter, *size, *has, wanted);
        } else {
            report_missing(cutter, *size, wanted);
        }
    }

    void say_nearest(Cutter& cutter, const Quantity& size, const Rational& has, const std::string& wanted) {
        Phrase line("The shop has no " + wanted + ": take the ");
        line << Quantity::length(has)
             << (has < size.value ? " one in more than one pass." : " one and part of its edge.");
        operation_.text.push_back(std::move(line));
        for (auto& [name, value] : cutter.sizes) {
            if (name.empty()) value.value = has;
        }
    }

    void report_missing(const Cutter& cutter, const Quantity& size, const std::string& wanted) {
        Diagnostic found = diagnose(Code::no_cutter, step_.where,
                                    fmt::format("{}: the shop has no {}", step_words(operation_), wanted));
        const std::optional<Rational> near = shop_.nearest(cutter.tool, size.value, style_.unit);
        found.help =
            near ? fmt::format("the nearest that it has is {}", format_length(*near, style_))
                 : fmt::format("it has no {} of any size: add it to shop.yaml", plain_words(cutter.tool));
        diagnostics_.add(std::move(found));
    }

    Operation& operation_;
    const Work& work_;
    const StepTemplate& step_;
    const Shop& shop_;
    const LengthStyle& style_;
    Diagnostics& diagnostics_;
};

}  // namespace

void choose_tooling(Operation& operation, const Work& work, const StepTemplate& step, const Shop& shop,
                    const LengthStyle& style, Diagnostics& diagnostics) {
    Tooling(operation, work, step, shop, style, diagnostics).choose();
}

}  // namespace rodwright
