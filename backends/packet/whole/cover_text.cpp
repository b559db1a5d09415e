#include "backends/packet/whole/cover_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "backends/boards/board_words.hpp"
#include "backends/words.hpp"
#include "compiler/quantity/format.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double cubic_mm_a_board_foot = 144 * 25.4 * 25.4 * 25.4;
constexpr double kilograms_a_pound = 0.45359237;

bool in_inches(const Piece& piece) {
    return piece.style.unit == LengthUnit::inch;
}

std::string mass_text(double kilograms, const Piece& piece) {
    return in_inches(piece) ? fmt::format("{:.1f} lb", kilograms / kilograms_a_pound)
                            : fmt::format("{:.1f} kg", kilograms);
}

FlowBlock sizes_block(const Context& context) {
    const Piece& piece = context.piece;
    FlowBlock block{"Overall size", {}};
    const auto size = [&](Axis axis) {
        return quantity_figure(Quantity::length(piece.box.size(axis)), context.figures());
    };
    block.paragraphs.push_back(size(Axis::wide) + " wide, " + size(Axis::deep) + " deep, " +
                               size(Axis::tall) + " tall");
    return block;
}

FlowBlock parts_block(const Piece& piece) {
    FlowBlock block{"Parts", {}};
    block.paragraphs.push_back(counted(piece.parts.size(), "part") + " of " +
                               counted(piece.kinds.size(), "kind") + ", " +
                               counted(piece.joints.size(), "joint"));
    return block;
}

struct WoodTotals {
    Rational stock;  // mm^3 of the parts' sizes, joints included
    Rational area;   // mm^2, for sheets
    double volume = 0;
    std::size_t parts = 0;
};

Rational stock_volume(const Kind& kind) {
    return kind.overall(Axis::wide) * kind.overall(Axis::deep) * kind.overall(Axis::tall);
}

std::map<std::string, WoodTotals> totals_by_wood(const Context& context) {
    std::map<std::string, WoodTotals> totals;
    for (std::size_t i = 0; i < context.piece.kinds.size(); ++i) {
        const Kind& kind = context.piece.kinds[i];
        WoodTotals& wood = totals[kind.wood];
        const auto count = static_cast<long>(kind.parts.size());
        wood.stock += stock_volume(kind) * count;
        wood.area += kind.overall(Axis::wide) * kind.overall(Axis::deep) * count;
        wood.parts += kind.parts.size();
        const SolidRef solid = context.input.solids.solid(static_cast<KindId>(i));
        if (solid) wood.volume += context.kernel.volume(*solid) * static_cast<double>(count);
    }
    return totals;
}

std::string amount_text(const Piece& piece, const std::string& name, const WoodTotals& totals) {
    const Wood* wood = piece.find_wood(name);
    if (wood != nullptr && wood->sheet) {
        return in_inches(piece) ? fmt::format("{:.1f} square feet", totals.area.get_d() / (304.8 * 304.8))
                                : fmt::format("{:.2f} m²", totals.area.get_d() / 1e6);
    }
    return in_inches(piece) ? fmt::format("{:.1f} board feet", totals.stock.get_d() / cubic_mm_a_board_foot)
                            : fmt::format("{:.4f} m³", totals.stock.get_d() / 1e9);
}

FlowBlock wood_block(const Piece& piece, const std::map<std::string, WoodTotals>& totals) {
    FlowBlock block{"Wood in the finished parts, before allowances and waste", {}};
    for (const auto& [name, wood] : totals) {
        block.paragraphs.push_back(capitalised(wood_words(piece, name)) + ": " +
                                   amount_text(piece, name, wood) + " in " + counted(wood.parts, "part"));
    }
    return block;
}

// Mass of the solids at the density of each wood; a wood without one is named, not guessed.
FlowBlock mass_block(const Piece& piece, const std::map<std::string, WoodTotals>& totals) {
    FlowBlock block{"Mass", {}};
    double mass = 0;
    std::string unknown;
    for (const auto& [name, totals_of_wood] : totals) {
        const Wood* wood = piece.find_wood(name);
        const double density = wood == nullptr ? 0 : wood->density.get_d();
        mass += totals_of_wood.volume * 1e-9 * density;
        if (density == 0) unknown += (unknown.empty() ? "" : ", ") + wood_words(piece, name);
    }
    block.paragraphs.push_back("About " + mass_text(mass, piece) + ", the wood alone at 12 % moisture");
    if (!unknown.empty()) block.paragraphs.push_back("Not counted, no density known: " + unknown);
    return block;
}

FlowBlock boards_block(const WoodPlan* plan) {
    if (plan == nullptr || !plan->planned) return {"", {}};
    return {"Boards", plan_summary(*plan)};
}

FlowBlock finish_block(const Piece& piece) {
    FlowBlock block{"Finish", {}};
    for (const Finish& finish : piece.finishes) {
        block.paragraphs.push_back(capitalised(plain_words(finish.name)) + ", " +
                                   counted(static_cast<std::size_t>(std::max(finish.coats, 0)), "coat"));
    }
    return block;
}

FlowBlock findings_block(const std::vector<std::string>& findings) {
    FlowBlock block{"Look at these first", {}};
    constexpr std::size_t shown = 6;
    for (std::size_t i = 0; i < std::min(shown, findings.size()); ++i) {
        block.paragraphs.push_back(capitalised(findings[i]));
    }
    if (findings.size() > shown) {
        block.paragraphs.push_back("and " + std::to_string(findings.size() - shown) +
                                   " more, in the compiler's output");
    }
    return block;
}

FlowBlock cautions_block(const Piece& piece) {
    FlowBlock block{"Before you start", {}};
    block.paragraphs = {
        "The sizes come from the design. Measure the wood and the parts that are already cut before you set "
        "a "
        "machine; try each set-up on a spare piece.",
        "Amounts, mass and times are estimates.",
        "A length with ~ before it is rounded to the nearest step shown.",
        "Guards and riving knife on, push sticks at hand, eyes and ears covered, dust drawn off where it is "
        "made.",
    };
    if (!piece.finishes.empty()) {
        block.paragraphs.push_back(
            "Rags with oil or oil varnish on them can catch fire by themselves: spread them flat outdoors to "
            "dry, or "
            "keep them under water in a closed metal can.");
    }
    return block;
}

void add_if_any(std::vector<FlowBlock>& blocks, FlowBlock block) {
    if (!block.paragraphs.empty()) blocks.push_back(std::move(block));
}

}  // namespace

std::vector<FlowBlock> cover_facts(const Context& context) {
    const std::map<std::string, WoodTotals> totals = totals_by_wood(context);
    std::vector<FlowBlock> blocks = {sizes_block(context), parts_block(context.piece),
                                     wood_block(context.piece, totals), mass_block(context.piece, totals)};
    add_if_any(blocks, boards_block(context.input.wood));
    add_if_any(blocks, finish_block(context.piece));
    add_if_any(blocks, findings_block(context.findings));
    blocks.push_back(cautions_block(context.piece));
    return blocks;
}

FlowBlock page_list(std::span<const Draft> others) {
    FlowBlock block{"Sheets", {}};
    std::string group;
    for (const Draft& draft : others) {
        const std::string number = std::to_string(draft.block.sheet);
        const std::string entry = draft.letter.empty() ? number : draft.letter + "\u00a0" + number;
        block.links.push_back({entry, sheet_anchor(draft.block.sheet)});
        if (draft.group != group) {
            block.paragraphs.push_back(capitalised(draft.group) + ": " + entry);
            group = draft.group;
        } else {
            block.paragraphs.back() += ", " + entry;
        }
    }
    return block;
}

}  // namespace rodwright::packet
