// Any bytes as a shop's rack; of what is one, every other entry is used and left whole, and the changed file
// has to be a rack too.
#include <algorithm>
#include <cstdlib>
#include <string>

#include "compiler/limits.hpp"
#include "compiler/stock/rack/rack_after.hpp"
#include "compiler/stock/rack/read_rack.hpp"

namespace {

using namespace rodwright;

const WoodTable& fuzz_woods() {
    static const WoodTable woods({{"ash", "ash", 600, "#d9c39a", std::nullopt, false, "N"},
                                  {"mdf", "mdf", 700, "#d9c39a", std::nullopt, true, "N"}});
    return woods;
}

std::optional<Rack> rack_in(const std::string& text) {
    SourceManager sources;
    Diagnostics diagnostics;
    return read_rack(sources, sources.add("fuzz.yaml", text), fuzz_woods(), diagnostics);
}

RackChange every_other(const Rack& rack) {
    RackChange change;
    for (std::size_t i = 0; i < rack.boards.size(); i += 2) {
        const RackBoard& board = rack.boards[i];
        change.used.push_back({board.name, 1});
        change.left.push_back({board.name, 0, 0, board.length, std::min(board.width, board.far_width)});
    }
    for (std::size_t i = 0; i < rack.sheets.size(); i += 2) {
        const RackSheet& sheet = rack.sheets[i];
        change.used.push_back({sheet.name, 1});
        change.left.push_back({sheet.name, 0, 0, sheet.length, sheet.width});
    }
    change.left_of_bought.emplace_back();
    change.left_of_bought.back().species = "ash";
    change.left_of_bought.back().thickness = change.left_of_bought.back().width = 20;
    change.left_of_bought.back().length = 500;
    change.left_of_bought_sheets.emplace_back();
    change.left_of_bought_sheets.back().species = "mdf";
    change.left_of_bought_sheets.back().thickness = change.left_of_bought_sheets.back().width = 20;
    change.left_of_bought_sheets.back().length = 500;
    return change;
}

// A line may come to be longer by some bytes than the longest that is read.
bool has_long_line(const std::string& text) {
    std::size_t start = 0;
    for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', start)) {
        if (end - start > limits::yaml_line - 100) return true;
        start = end + 1;
    }
    return text.size() - start > limits::yaml_line - 100;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    const std::optional<Rack> rack = rack_in(text);
    if (!rack) return 0;
    if (rack_after(text, *rack, {}) != text) std::abort();
    const RackChange change = every_other(*rack);
    const std::optional<Rack> after = rack_in(rack_after(text, *rack, change));
    if (!after && !has_long_line(text)) std::abort();
    return 0;
}
