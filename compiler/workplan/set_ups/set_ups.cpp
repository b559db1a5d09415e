#include "compiler/workplan/set_ups/set_ups.hpp"

#include <algorithm>
#include <map>

namespace rodwright {
namespace {

std::string key_of(const Operation& operation, const LengthStyle& style) {
    std::string key = operation.machine;
    if (operation.cutter) {
        key += "|" + operation.cutter->tool;
        for (const auto& [name, size] : operation.cutter->sizes)
            key += "|" + name + format_quantity(size, style);
    }
    for (const StepSetting& setting : operation.settings)
        key += "|" + setting.name + "=" + read_out(setting.value, style);
    if (operation.settings.empty()) key += "|" + operation.work + "." + operation.name;
    return key;
}

}  // namespace

std::vector<SetUp> find_set_ups(std::vector<WorkItem>& items, const LengthStyle& style) {
    std::vector<SetUp> set_ups;
    std::map<std::string, std::size_t> known;
    for (std::size_t i = 0; i < items.size(); ++i) {
        Operation& operation = items[i].operation;
        if (operation.machine.empty()) continue;
        const auto [place, is_new] = known.try_emplace(key_of(operation, style), set_ups.size());
        if (is_new)
            set_ups.push_back({operation.machine, operation.cutter, operation.settings, false, 0, {}});
        SetUp& set_up = set_ups[place->second];
        set_up.test_piece = set_up.test_piece || operation.test_piece;
        set_up.time = std::max(set_up.time, operation.labour.set_up);
        set_up.operations.push_back(i);
        operation.set_up = place->second;
    }
    return set_ups;
}

}  // namespace rodwright
