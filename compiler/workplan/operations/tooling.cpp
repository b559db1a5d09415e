#include "compiler/workplan/operations/tooling.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/words.hpp"
#include "compiler/workplan/operations/guide_bush.hpp"

namespace rodwright {
namespace {

using Cutter = ToolNeed::Alternative;

constexpr std::string_view hand = "hand";

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
    Tooling(const Piece& piece, Operation& operation, ToolingJob job, const Shop& shop,
            Diagnostics& diagnostics)
        : piece_(piece),
          operation_(operation),
          job_(std::move(job)),
          shop_(shop),
          style_(piece.style),
          diagnostics_(diagnostics) {
        job_.asked.settings = job_.step.settings;
    }

    std::vector<MachineLimit> choose() {
        if (job_.step.machine.empty()) return {};
        const Machine* machine = shop_.machine(job_.step.machine);
        if (machine == nullptr) {
            machine = another_machine("No " + plain_words(job_.step.machine) + " here.", no_machine());
        } else if (const auto refused = refusal(*machine)) {
            const std::string lead = "Too much for the " + plain_words(machine->name) + ".";
            machine = another_machine(lead, diagnostic_of(*refused));
        }
        if (machine == nullptr) return {};
        operation_.machine = machine->name;
        operation_.cutter = cutter_at(*machine);
        std::vector<MachineLimit> limits = limits_at(*machine);
        for (const MachineLimit& limit : limits) {
            if (!limit.kept()) hold_small(*machine, limit);
        }
        if (operation_.cutter) fit_cutter(*operation_.cutter);
        if (operation_.cutter) add_bush(*machine, *operation_.cutter);
        if (operation_.cutter) slow_down(*machine, *operation_.cutter);
        return limits;
    }

  private:
    std::optional<Cutter> cutter_at(const Machine& machine) const {
        const bool as_asked = machine.name == job_.step.machine;
        return as_asked && job_.step.cutter ? job_.step.cutter : held_by(machine, job_.work);
    }

    std::vector<MachineLimit> limits_at(const Machine& machine) const {
        AskedWork asked = job_.asked;
        asked.cutter = cutter_at(machine);
        return limits_of(piece_, machine, shop_, asked);
    }

    // The first limit that rules the machine out.
    std::optional<MachineLimit> refusal(const Machine& machine) const {
        for (MachineLimit& limit : limits_at(machine)) {
            if (!limit.kept() && limit.code != Code::hard_to_hold) return std::move(limit);
        }
        return std::nullopt;
    }

    Diagnostic no_machine() const {
        return diagnose(
            Code::no_machine, job_.step.where,
            fmt::format("{}: the shop has no {}", step_words(operation_), plain_words(job_.step.machine)));
    }

    std::string shown(const Quantity& value) const { return format_quantity(value, style_); }

    Diagnostic diagnostic_of(const MachineLimit& limit) const {
        const std::string step = step_words(operation_);
        const std::string machine = plain_words(limit.machine);
        if (limit.code == Code::too_fast) {
            return diagnose(limit.code, job_.where,
                            fmt::format("{}: the {} turns {} times a minute at the least, and a cutter that "
                                        "wide may turn {} times",
                                        step, machine, shown(limit.asked), shown(limit.limit)));
        }
        Diagnostic found = diagnose(
            limit.code, job_.where,
            fmt::format("{}: {} {}, and the {} takes {} at the {}", step, limit.what, shown(limit.asked),
                        machine, shown(limit.limit), limit.at_least ? "least" : "most"));
        if (limit.part != PartId::none) found.labels.push_back({piece_[limit.part].where, "this part"});
        return found;
    }

    // Null where there is only the bench. Settings are those of the machine that is not there.
    const Machine* another_machine(const std::string& lead, Diagnostic found) {
        operation_.settings.clear();
        const std::vector<OtherWay>& ways = shop_.instead_of(job_.step.machine);
        const auto way = std::ranges::find_if(ways, [&](const OtherWay& other) {
            const Machine* machine = shop_.machine(other.use);
            return other.use == hand || (machine != nullptr && turns_cutter(*machine) && !refusal(*machine));
        });
        if (way == ways.end()) {
            diagnostics_.add(
                std::move(found).hint("add a machine that does it to shop.yaml, or choose another joint"));
            return nullptr;
        }
        operation_.text.emplace_back(lead + " " + way->text);
        diagnostics_.add(std::move(found).hint(way->text));
        return way->use == hand ? nullptr : shop_.machine(way->use);
    }

    // A bit that runs in a bush can follow a template.
    void add_bush(const Machine& machine, const Cutter& cutter) {
        const bool takes_bush = std::ranges::find(machine.holds, "guide_bush") != machine.holds.end();
        const Quantity* size = size_of(cutter);
        const bool in_template = std::ranges::any_of(job_.work.needs, [&](const ToolNeed& need) {
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

    // A plain saw does not do the work of a cutter.
    bool turns_cutter(const Machine& machine) const {
        const Machine* asked = shop_.machine(job_.step.machine);
        return asked == nullptr || !cutter_at(*asked) || !machine.holds.empty();
    }

    void hold_small(const Machine& machine, const MachineLimit& limit) {
        const SmallestHeld& smallest = *machine.smallest;
        const Rational width = piece_[piece_[limit.part].kind].cut(Axis::deep);
        operation_.text.emplace_back(smallest.otherwise);
        diagnostics_.add(
            diagnose(limit.code, job_.where,
                     fmt::format(
                         "{}: `{}` is {} long and {} wide, and the {} holds what is {} long or {} wide",
                         step_words(operation_), piece_[limit.part].name, shown(limit.asked),
                         shown(Quantity::length(width)), plain_words(machine.name),
                         shown(Quantity::length(smallest.length)), shown(Quantity::length(smallest.width))))
                .label(piece_[limit.part].where, "this part")
                .hint(smallest.otherwise));
    }

    // A wide cutter turns slower than the machine may.
    void slow_down(const Machine& machine, const Cutter& cutter) {
        const Quantity* size = size_of(cutter);
        if (size == nullptr || !machine.fastest) return;
        const std::optional<Rational> turns = shop_.most_turns(cutter.tool, size->value);
        if (!turns || *turns >= *machine.fastest) return;
        Phrase value;
        value << Quantity::number(*turns) << " turns a minute at the most";
        operation_.settings.push_back({"speed", std::move(value), {}});
    }

    void fit_cutter(Cutter& cutter) {
        const Quantity* size = size_of(cutter);
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
        Diagnostic found = diagnose(Code::no_cutter, job_.step.where,
                                    fmt::format("{}: the shop has no {}", step_words(operation_), wanted));
        const std::optional<Rational> near = shop_.nearest(cutter.tool, size.value, style_.unit);
        found.help =
            near ? fmt::format("the nearest that it has is {}", format_length(*near, style_))
                 : fmt::format("it has no {} of any size: add it to shop.yaml", plain_words(cutter.tool));
        diagnostics_.add(std::move(found));
    }

    const Piece& piece_;
    Operation& operation_;
    ToolingJob job_;
    const Shop& shop_;
    const LengthStyle& style_;
    Diagnostics& diagnostics_;
};

}  // namespace

std::vector<MachineLimit> choose_tooling(const Piece& piece, Operation& operation, ToolingJob job,
                                         const Shop& shop, Diagnostics& diagnostics) {
    return Tooling(piece, operation, std::move(job), shop, diagnostics).choose();
}

}  // namespace rodwright
