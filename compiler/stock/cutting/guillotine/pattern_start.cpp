#include "compiler/stock/cutting/guillotine/pattern_start.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "compiler/stock/cutting/columns/master.hpp"

namespace rodwright::cutting::guillotine {
namespace {

// One layout that may be repeated, as the linear programme sees it and as the search does.
struct Column {
    columns::Pattern pattern;  // entries by part kind
    Layout layout;
};

columns::Pattern pattern_of(const Layout& layout, std::size_t kinds) {
    std::vector<int> counts(kinds, 0);
    for (const Node& node : layout.nodes()) {
        if (node.is_part()) ++counts[at(node.part)];
    }
    columns::Pattern pattern;
    pattern.bar = layout.stock();
    for (std::size_t i = 0; i < kinds; ++i) {
        if (counts[i] > 0) pattern.entries.push_back({static_cast<int>(i), counts[i]});
    }
    return pattern;
}

class PatternStart {
  public:
    PatternStart(const Kinds& kinds, Search& search, Amount work)
        : kinds_(kinds),
          search_(search),
          work_left_(work),
          random_(7),
          work_of_one_(std::max<Amount>(work / 600, 20'000)) {
        for (const Kind& kind : kinds.parts) left_.push_back(kind.quantity);
        for (const Stock& stock : kinds.stock) stock_left_.push_back(stock.available);
    }

    void run() {
        while (fix_some()) {
        }
    }
    Amount work_left() const { return work_left_; }

  private:
    // The rows are the part kinds of which some are left.
    columns::Cover rows() {
        columns::Cover cover;
        row_of_.assign(left_.size(), none);
        kind_of_.clear();
        for (std::size_t i = 0; i < left_.size(); ++i) {
            if (left_[i] == 0) continue;
            row_of_[i] = static_cast<int>(kind_of_.size());
            kind_of_.push_back(static_cast<int>(i));
            cover.wanted.push_back({0, left_[i]});
        }
        const int pieces = std::accumulate(left_.begin(), left_.end(), 0);
        for (std::size_t s = 0; s < kinds_.stock.size(); ++s) {
            cover.bars.push_back({0, stock_left_[s], stock_left_[s] < pieces, kinds_.stock[s].cost});
        }
        return cover;
    }

    bool proper(const Column& column) const {
        if (stock_left_[at(column.pattern.bar)] == 0) return false;
        return std::all_of(column.pattern.entries.begin(), column.pattern.entries.end(),
                           [&](const auto& entry) { return left_[at(entry.wanted)] >= entry.count; });
    }

    void add(columns::Master& master, std::size_t column) {
        columns::Pattern pattern = columns_[column].pattern;
        for (auto& entry : pattern.entries) entry.wanted = row_of_[at(entry.wanted)];
        master.add(pattern);
        added_.push_back(column);
    }

    bool fix_some() {
        const columns::Cover cover = rows();
        if (cover.wanted.empty()) return false;
        columns::Master master(cover);
        added_.clear();
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            if (proper(columns_[c])) add(master, c);
        }
        generate(master);
        return fix(master.amounts());
    }

    void generate(columns::Master& master) {
        for (int failures = 0; failures < 2 && work_left_ > 0;) {
            master.optimise();
            bool any = false;
            for (int stock = 0; stock < static_cast<int>(kinds_.stock.size()); ++stock) {
                if (stock_left_[at(stock)] > 0 && price(master, stock)) any = true;
            }
            failures = any ? 0 : failures + 1;
        }
        master.optimise();
    }

    // Looks for a layout on that stock that is worth more than it costs.
    bool price(columns::Master& master, int stock) {
        const Stock& piece = kinds_.stock[at(stock)];
        std::vector<Amount> weights(left_.size(), 0);
        const double price = std::max(1e-3, static_cast<double>(piece.cost) - master.bar_dual(at(stock)));
        const double unit = static_cast<double>(piece.weight) / price;
        for (std::size_t row = 0; row < kind_of_.size(); ++row) {
            const double dual = std::min(master.duals()[row], 2.0 * price);
            weights[at(kind_of_[row])] = static_cast<Amount>(dual * unit);
        }
        const Kinds priced = kinds_.for_one_sheet(stock, left_, weights);
        Search search(priced, random_.next());
        Layout best(priced);
        search.fill_one(best, work_of_one_);
        work_left_ -= search.work();
        if (!best.in_use() ||
            static_cast<double>(best.filled()) < static_cast<double>(piece.weight) * (1 + 1e-5))
            return false;
        best.bind(kinds_, stock);
        columns_.push_back({pattern_of(best, left_.size()), best});
        add(master, columns_.size() - 1);
        return true;
    }

    // Takes the whole parts of the amounts, or one of the layout with the greatest fraction. False if there
    // is none that is more likely than not.
    bool fix(const std::vector<double>& amounts) {
        bool any = false;
        double greatest = 0.5;
        std::size_t best = columns_.size();
        for (std::size_t p = 0; p < amounts.size(); ++p) {
            const double whole = std::floor(amounts[p] + 1e-4);
            for (int i = 0; i < static_cast<int>(whole) && take(added_[p]); ++i) any = true;
            if (amounts[p] - whole <= greatest) continue;
            greatest = amounts[p] - whole;
            best = added_[p];
        }
        return any || (best < columns_.size() && take(best));
    }

    bool take(std::size_t index) {
        const Column& column = columns_[index];
        if (!proper(column) || !search_.adopt(column.layout)) return false;
        for (const auto& entry : column.pattern.entries) left_[at(entry.wanted)] -= entry.count;
        --stock_left_[at(column.pattern.bar)];
        return true;
    }

    const Kinds& kinds_;
    Search& search_;
    Amount work_left_;
    Random random_;
    Amount work_of_one_;
    std::vector<int> left_;
    std::vector<int> stock_left_;
    std::vector<Column> columns_;
    std::vector<std::size_t> added_;  // to the master at hand: indices into columns_
    std::vector<int> row_of_;
    std::vector<int> kind_of_;
};

}  // namespace

bool has_many_equal_parts(const Kinds& kinds) {
    int pieces = 0;
    for (const Kind& kind : kinds.parts) pieces += kind.quantity;
    return pieces >= 4 * static_cast<int>(kinds.parts.size());
}

Amount start_from_patterns(const Kinds& kinds, Search& search, Amount work) {
    PatternStart start(kinds, search, work);
    start.run();
    return work - start.work_left();
}

}  // namespace rodwright::cutting::guillotine
