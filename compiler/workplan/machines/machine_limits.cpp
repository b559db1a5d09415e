#include "compiler/workplan/machines/machine_limits.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/words.hpp"

namespace rodwright {
namespace {

using Cutter = ToolNeed::Alternative;

Rational overall(const Piece& piece, PartId part, Axis axis) {
    return piece[piece[part].kind].cut(axis);
}

// The one length that a setting is, as "3/4"" is and "square" is not.
const Quantity* length_in(const Phrase& value) {
    if (value.words.size() != 1) return nullptr;
    const auto* quantity = std::get_if<Quantity>(&value.words.front());
    return quantity != nullptr && quantity->is_length() ? quantity : nullptr;
}

const Quantity* setting(const std::vector<StepSetting>& settings, const std::string& name) {
    const auto found = std::ranges::find(settings, name, &StepSetting::name);
    return found == settings.end() ? nullptr : length_in(found->value);
}

// As the definition has it, else as deep as the machine is set.
const Quantity* depth_of_cut(const AskedWork& asked) {
    const auto& sizes = asked.cutter->sizes;
    const auto reach = std::ranges::find(sizes, "reach", &std::pair<std::string, Quantity>::first);
    if (reach != sizes.end()) return &reach->second;
    const Quantity* depth = setting(asked.settings, "depth");
    return depth != nullptr ? depth : setting(asked.settings, "height");
}

class Limits {
  public:
    Limits(const Piece& piece, const Machine& machine) : piece_(piece), machine_(machine) {}

    void most(std::string what, const Rational& asked, const Rational& limit, PartId part = PartId::none) {
        add(std::move(what), Quantity::length(asked), Quantity::length(limit), false, part);
    }
    void least(std::string what, const Rational& asked, const Rational& limit, PartId part) {
        add(std::move(what), Quantity::length(asked), Quantity::length(limit), true, part);
    }

    void length(PartId part) {
        if (machine_.shortest)
            least("shortest part", overall(piece_, part, Axis::wide), *machine_.shortest, part);
    }

    // A part is held by its length or by its width.
    void held(PartId part) {
        if (!machine_.smallest) return;
        const Rational length = overall(piece_, part, Axis::wide);
        const Rational width = overall(piece_, part, Axis::deep);
        const bool narrow = width < machine_.smallest->width;
        if (!narrow) return;
        least("shortest narrow part", length, machine_.smallest->length, part);
        list_.back().code = Code::hard_to_hold;
    }

    void section(PartId part) {
        if (machine_.widest) most("widest part", overall(piece_, part, Axis::deep), *machine_.widest, part);
        if (machine_.tallest)
            most("thickest part", overall(piece_, part, Axis::tall), *machine_.tallest, part);
    }

    void settings(const std::vector<StepSetting>& settings) {
        for (const auto& [name, limit] : machine_.most) {
            if (const Quantity* value = setting(settings, name)) most(name, value->value, limit);
        }
    }

    void cutter(const AskedWork& asked, const Shop& shop) {
        const Quantity* size = asked.cutter ? size_of(*asked.cutter) : nullptr;
        if (size == nullptr) return;
        const std::string& tool = asked.cutter->tool;
        if (machine_.largest) most("largest cutter", shop.diameter_of(tool, size->value), *machine_.largest);
        const Quantity* depth = depth_of_cut(asked);
        const std::optional<Rational> reach = shop.reach_of(tool, size->value);
        if (depth != nullptr && reach) most("reach of the " + plain_words(tool), depth->value, *reach);
        const std::optional<Rational> turns = shop.most_turns(tool, size->value);
        if (!turns || !machine_.slowest) return;
        add("slowest turns a minute", Quantity::number(*machine_.slowest), Quantity::number(*turns), false,
            PartId::none);
        list_.back().code = Code::too_fast;
    }

    std::vector<MachineLimit> take() { return std::move(list_); }

  private:
    void add(std::string what, Quantity asked, Quantity limit, bool at_least, PartId part) {
        list_.push_back({machine_.name, std::move(what), std::move(asked), std::move(limit), at_least, part});
    }

    const Piece& piece_;
    const Machine& machine_;
    std::vector<MachineLimit> list_;
};

// How much of the limit is used up.
double used(const MachineLimit& limit) {
    const double share = limit.asked.to_double() / limit.limit.to_double();
    return limit.at_least ? 1 / share : share;
}

}  // namespace

const Quantity* size_of(const Cutter& cutter) {
    const auto first = std::ranges::find(cutter.sizes, "", &std::pair<std::string, Quantity>::first);
    return first == cutter.sizes.end() || !first->second.is_length() ? nullptr : &first->second;
}

std::vector<MachineLimit> limits_of(const Piece& piece, const Machine& machine, const Shop& shop,
                                    const AskedWork& asked) {
    Limits limits(piece, machine);
    const auto length = [&](PartId part) { return overall(piece, part, Axis::wide); };
    if (!asked.parts.empty()) limits.length(*std::ranges::min_element(asked.parts, {}, length));
    for (const PartId part : asked.parts) limits.held(part);
    if (machine.under && asked.tallest != PartId::none)
        limits.most("tallest part under the cutter", asked.under, *machine.under, asked.tallest);
    limits.settings(asked.settings);
    limits.cutter(asked, shop);
    return limits.take();
}

std::vector<MachineLimit> limits_of(const Piece& piece, const Machine& machine, PartId part, bool by_length) {
    Limits limits(piece, machine);
    limits.section(part);
    if (by_length) {
        limits.length(part);
        limits.held(part);
    }
    return limits.take();
}

std::vector<Number> machine_numbers(const Piece& piece, const std::vector<MachineLimit>& limits) {
    std::vector<const MachineLimit*> nearest;
    for (const MachineLimit& limit : limits) {
        const auto same = std::ranges::find_if(nearest, [&](const MachineLimit* other) {
            return other->machine == limit.machine && other->what == limit.what;
        });
        if (same == nearest.end()) {
            nearest.push_back(&limit);
        } else if (used(limit) > used(**same)) {
            *same = &limit;
        }
    }
    std::vector<Number> numbers;
    for (const MachineLimit* limit : nearest) {
        Number made;
        made.check = "machines";
        made.title = fmt::format("{}: {}", plain_words(limit->machine), limit->what);
        if (limit->part != PartId::none) made.title += fmt::format(", {}", piece[limit->part].declared);
        made.value = limit->asked;
        made.limit = limit->limit;
        made.formula = fmt::format("what the work asks for, nearest to the {} that the machine takes",
                                   limit->at_least ? "least" : "most");
        made.source = "shop.yaml, where the source of each limit stands";
        numbers.push_back(std::move(made));
    }
    return numbers;
}

}  // namespace rodwright
