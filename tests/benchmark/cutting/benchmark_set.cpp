#include "tests/benchmark/cutting/benchmark_set.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace rodwright::cutting {
namespace {

// The words of each line that is neither empty nor a comment.
class Lines {
  public:
    explicit Lines(const std::filesystem::path& path) : path_(path), file_(path) {
        if (!file_) throw std::runtime_error(fmt::format("cannot read {}", path.string()));
    }

    bool next(std::istringstream& words) {
        std::string line;
        while (std::getline(file_, line)) {
            ++number_;
            if (line.empty() || line[0] == '#') continue;
            words.clear();
            words.str(line);
            return true;
        }
        return false;
    }

    [[noreturn]] void fail(const std::string& what) const {
        throw std::runtime_error(fmt::format("{}:{}: {}", path_.string(), number_, what));
    }

    template <typename Value>
    Value read(std::istringstream& words) const {
        Value value{};
        if (!(words >> value)) fail("a value is missing or wrong");
        return value;
    }

  private:
    std::filesystem::path path_;
    std::ifstream file_;
    int number_ = 0;
};

Size read_size(const Lines& lines, std::istringstream& words, int dimensions) {
    Size size{{0, 1}};
    for (std::size_t axis = 0; axis < static_cast<std::size_t>(dimensions); ++axis) {
        size.along[axis] = lines.read<int>(words);
    }
    return size;
}

class ProblemReader {
  public:
    ProblemReader(const std::filesystem::path& path, const BestKnown& row) : lines_(path), row_(row) {
        if (row.dimensions == 1) return;
        if (row.rule.size() == 3) problem_.rule.stages = row.rule[2] - '0';
    }

    Problem read() {
        std::istringstream words;
        while (lines_.next(words)) {
            const auto keyword = lines_.read<std::string>(words);
            if (keyword == "kerf") problem_.kerf.along.fill(lines_.read<int>(words));
            if (keyword == "goal") by_count_ = lines_.read<std::string>(words) == "count";
            if (keyword == "stock") read_stock(words);
            if (keyword == "part") read_part(words);
        }
        // In one dimension the widths are 1, and no cut divides them.
        if (row_.dimensions == 1) {
            for (StockPiece& piece : problem_.stock) piece.size.along[1] = 1;
        }
        return problem_;
    }

  private:
    void read_stock(std::istringstream& words) {
        lines_.read<std::string>(words);
        StockPiece piece;
        piece.size = read_size(lines_, words, row_.dimensions);
        const auto available = lines_.read<std::string>(words);
        if (available != "*") piece.available = std::stoi(available);
        const auto cost = lines_.read<Amount>(words);
        piece.cost = by_count_ ? 1 : cost;
        problem_.stock.push_back(piece);
    }

    void read_part(std::istringstream& words) {
        lines_.read<std::string>(words);
        PartKind part;
        part.size = read_size(lines_, words, row_.dimensions);
        part.quantity = lines_.read<int>(words);
        std::string flag;
        words >> flag;
        part.may_turn = row_.rule[0] == 'R' || (row_.rule == "MG" && flag == "free");
        problem_.parts.push_back(part);
    }

    Lines lines_;
    const BestKnown& row_;
    Problem problem_;
    bool by_count_ = true;
};

}  // namespace

Effort effort_named(const std::string& name) {
    if (name == "quick") return Effort::quick;
    if (name == "normal") return Effort::normal;
    if (name == "deep") return Effort::deep;
    throw std::runtime_error(fmt::format("no effort '{}'", name));
}

std::vector<BestKnown> read_best_known(const std::filesystem::path& folder) {
    Lines lines(folder / "best-known.tsv");
    std::vector<BestKnown> rows;
    std::istringstream words;
    lines.next(words);  // the heading
    while (lines.next(words)) {
        BestKnown row;
        row.instance = lines.read<std::string>(words);
        row.dimensions = lines.read<int>(words);
        row.pieces = lines.read<int>(words);
        lines.read<std::string>(words);
        row.rule = lines.read<std::string>(words);
        row.lower = lines.read<Amount>(words);
        row.upper = lines.read<Amount>(words);
        rows.push_back(row);
    }
    return rows;
}

void apply_refuted(const std::filesystem::path& list, std::vector<BestKnown>& rows) {
    Lines lines(list);
    std::istringstream words;
    lines.next(words);  // the heading
    while (lines.next(words)) {
        const auto instance = lines.read<std::string>(words);
        const auto rule = lines.read<std::string>(words);
        const auto value = lines.read<Amount>(words);
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const BestKnown& known) {
            return known.instance == instance && known.rule == rule;
        });
        if (row == rows.end()) lines.fail("no such row in the set");
        row->lower = value;
        row->upper = value;
    }
}

Problem read_problem(const std::filesystem::path& folder, const BestKnown& row) {
    const std::filesystem::path path = folder / (row.dimensions == 1 ? "1d" : "2d") / (row.instance + ".txt");
    return ProblemReader(path, row).read();
}

}  // namespace rodwright::cutting
