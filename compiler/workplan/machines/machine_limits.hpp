// What work asks of the machine that it is done at, held against what the machine takes: the sizes of parts,
// settings, cutters and their speed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/check/findings.hpp"
#include "compiler/data/shop.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

struct MachineLimit {
    std::string machine;
    std::string what;  // "depth"
    Quantity asked;
    Quantity limit;
    bool at_least = false;       // the limit is the least that it takes, not the most
    PartId part = PartId::none;  // whose size it is
    Code code = Code::beyond_machine;

    bool kept() const { return at_least ? asked.value >= limit.value : asked.value <= limit.value; }
};

// One step of a joint or shape, at whatever machine.
struct AskedWork {
    std::vector<PartId> parts;
    PartId tallest = PartId::none;  // of those that stand or lie under the cutter; none: not known
    Rational under;                 // how tall it is there
    std::vector<StepSetting> settings;
    std::optional<ToolNeed::Alternative> cutter;
};

std::vector<MachineLimit> limits_of(const Piece& piece, const Machine& machine, const Shop& shop,
                                    const AskedWork& asked);

// General work, as ripping or planing, on one part. `by_length` where its finished length counts: before they
// are cut to it, short parts are still together in one.
std::vector<MachineLimit> limits_of(const Piece& piece, const Machine& machine, PartId part, bool by_length);

// The cutter's size where it is a length, or null.
const Quantity* size_of(const ToolNeed::Alternative& cutter);

// The nearest to each machine's limits.
std::vector<Number> machine_numbers(const Piece& piece, const std::vector<MachineLimit>& limits);

}  // namespace rodwright
