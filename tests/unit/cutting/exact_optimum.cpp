#include "tests/unit/cutting/exact_optimum.hpp"

#include <glpk.h>

#include <cmath>
#include <memory>
#include <stdexcept>

#include "tests/unit/cutting/patterns.hpp"

namespace rodwright::cutting {
namespace {

// min sum cost(s) x(s, p)  with  sum p(i) x(s, p) >= quantity(i),  sum over p of x(s, p) <= available(s),
// x whole: one row for each kind of part, then one for each kind of stock.
class Programme {
  public:
    explicit Programme(const Problem& problem) : programme_(glp_create_prob(), glp_delete_prob) {
        glp_term_out(GLP_OFF);
        glp_set_obj_dir(programme_.get(), GLP_MIN);
        for (const PartKind& part : problem.parts) {
            glp_set_row_bnds(programme_.get(), glp_add_rows(programme_.get(), 1), GLP_LO, part.quantity, 0);
        }
        for (const StockPiece& piece : problem.stock) {
            const int row = glp_add_rows(programme_.get(), 1);
            const int type = piece.available ? GLP_UP : GLP_FR;
            glp_set_row_bnds(programme_.get(), row, type, 0, piece.available.value_or(0));
        }
    }

    void add(const Counts& pattern, int stock_row, Amount cost) {
        std::vector<int> rows = {0, stock_row};  // GLPK counts from 1
        std::vector<double> values = {0, 1};
        for (std::size_t i = 0; i < pattern.size(); ++i) {
            rows.push_back(static_cast<int>(i) + 1);
            values.push_back(pattern[i]);
        }
        const int column = glp_add_cols(programme_.get(), 1);
        glp_set_col_kind(programme_.get(), column, GLP_IV);
        glp_set_col_bnds(programme_.get(), column, GLP_LO, 0, 0);
        glp_set_obj_coef(programme_.get(), column, static_cast<double>(cost));
        glp_set_mat_col(programme_.get(), column, static_cast<int>(rows.size()) - 1, rows.data(),
                        values.data());
    }

    std::optional<Amount> optimum() {
        glp_iocp options;
        glp_init_iocp(&options);
        options.presolve = GLP_ON;
        options.msg_lev = GLP_MSG_OFF;
        const int result = glp_intopt(programme_.get(), &options);
        if (result == GLP_ENOPFS) return std::nullopt;
        if (result != 0 || glp_mip_status(programme_.get()) != GLP_OPT) {
            throw std::runtime_error("GLPK has not proved an optimum");
        }
        return std::llround(glp_mip_obj_val(programme_.get()));
    }

  private:
    std::unique_ptr<glp_prob, void (*)(glp_prob*)> programme_;
};

}  // namespace

std::optional<Amount> exact_optimum(const Problem& problem) {
    Programme programme(problem);
    int row = static_cast<int>(problem.parts.size());
    for (const StockPiece& piece : problem.stock) {
        ++row;
        for (const Counts& pattern : all_patterns(problem, piece)) programme.add(pattern, row, piece.cost);
    }
    return programme.optimum();
}

}  // namespace rodwright::cutting
