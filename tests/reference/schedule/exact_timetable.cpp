#include "tests/reference/schedule/exact_timetable.hpp"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numeric>
#include <stdexcept>

namespace rodwright::schedule {
namespace {

struct Term {
    int column = 0;
    double factor = 0;
};

// Columns: the makespan; for each job when its block (set-up and work) begins and whether it sets up; and for
// each pair whether one job comes right after the other, once in the hands of a worker and once at a machine.
// Of the pairs, job n stands for the begin and the end of a row.
class Programme {
  public:
    explicit Programme(const Problem& problem)
        : problem_(problem), programme_(glp_create_prob(), glp_delete_prob) {
        glp_term_out(GLP_OFF);
        glp_set_obj_dir(programme_.get(), GLP_MIN);
        for (const Job& job : problem.jobs)
            horizon_ += static_cast<double>(job.work + job.rest + set_up_work(job));
        for (const Precedence& p : problem.precedences) horizon_ += static_cast<double>(p.wait);
        find_order();
        makespan_ = column(GLP_CV, horizon_);
        for (std::size_t i = 0; i < size(); ++i) begins_.push_back(column(GLP_CV, horizon_));
        for (std::size_t i = 0; i < size(); ++i) sets_up_.push_back(column(GLP_BV, 1));
        add_times();
        std::vector<std::size_t> all(size());
        std::iota(all.begin(), all.end(), std::size_t{0});
        add_rows_of(all, static_cast<double>(problem.workers));
        for (std::size_t machine = 0; machine < problem.set_ups.size(); ++machine) add_machine(machine);
    }

    Optimum solve() {
        Optimum optimum;
        glp_set_obj_coef(programme_.get(), makespan_, 1);
        optimum.makespan = minimum();
        glp_set_obj_coef(programme_.get(), makespan_, 0);
        glp_set_col_bnds(programme_.get(), makespan_, GLP_DB, 0,
                         static_cast<double>(optimum.makespan) + 0.01);
        for (const int column : sets_up_) glp_set_obj_coef(programme_.get(), column, 1);
        optimum.set_ups = static_cast<std::size_t>(minimum());
        return optimum;
    }

  private:
    std::size_t size() const { return problem_.jobs.size(); }
    Seconds set_up_work(const Job& job) const { return job.set_up ? problem_.set_ups[*job.set_up].work : 0; }

    void find_order() {
        precedes_.assign(size(), std::vector<bool>(size(), false));
        for (const Precedence& p : problem_.precedences) precedes_[p.before][p.after] = true;
        for (std::size_t via = 0; via < size(); ++via) {
            for (std::size_t i = 0; i < size(); ++i) {
                for (std::size_t k = 0; k < size(); ++k) {
                    if (precedes_[i][via] && precedes_[via][k]) precedes_[i][k] = true;
                }
            }
        }
    }

    int column(int kind, double most) {
        const int index = glp_add_cols(programme_.get(), 1);
        glp_set_col_kind(programme_.get(), index, kind);
        if (most > 0) glp_set_col_bnds(programme_.get(), index, GLP_DB, 0, most);
        return index;
    }

    void row(int type, double bound, const std::vector<Term>& terms) {
        std::vector<int> columns = {0};  // GLPK counts from 1
        std::vector<double> factors = {0};
        for (const Term& term : terms) {
            columns.push_back(term.column);
            factors.push_back(term.factor);
        }
        const int index = glp_add_rows(programme_.get(), 1);
        glp_set_row_bnds(programme_.get(), index, type, bound, bound);
        glp_set_mat_row(programme_.get(), index, static_cast<int>(terms.size()), columns.data(),
                        factors.data());
    }

    // end(job) = begin + set-up if one is made + work; here the first two.
    std::vector<Term> work_begin(std::size_t job, double sign) const {
        return {{begins_[job], sign},
                {sets_up_[job], sign * static_cast<double>(set_up_work(problem_.jobs[job]))}};
    }

    void add_times() {
        std::vector<Term> total = {{makespan_, static_cast<double>(problem_.workers)}};
        double work = 0;
        for (std::size_t i = 0; i < size(); ++i) {
            const Job& job = problem_.jobs[i];
            std::vector<Term> terms = work_begin(i, -1);
            terms.push_back({makespan_, 1});
            row(GLP_LO, static_cast<double>(job.work + job.rest), terms);
            if (!job.set_up) row(GLP_UP, 0, {{sets_up_[i], 1}});
            total.push_back({sets_up_[i], -static_cast<double>(set_up_work(job))});
            work += static_cast<double>(job.work);
        }
        row(GLP_LO, work, total);  // follows from the rest, and helps GLPK
        for (const Precedence& p : problem_.precedences) {
            std::vector<Term> terms = work_begin(p.after, 1);
            for (const Term& term : work_begin(p.before, -1)) terms.push_back(term);
            row(GLP_LO, static_cast<double>(problem_.jobs[p.before].work + p.wait), terms);
        }
    }

    // Each of the jobs stands in one of at most `rows` rows, and a block begins after the one before it has
    // ended. Gives back, by predecessor and successor, the columns; the last index is the begin or end.
    std::vector<std::vector<int>> add_rows_of(const std::vector<std::size_t>& jobs, double rows) {
        const std::size_t count = jobs.size();
        std::vector<std::vector<int>> next(count + 1, std::vector<int>(count + 1, 0));
        for (std::size_t i = 0; i <= count; ++i) {
            for (std::size_t k = 0; k <= count; ++k) {
                if (i == k) continue;
                next[i][k] = column(GLP_BV, 1);
                const bool backwards = i < count && k < count && precedes_[jobs[k]][jobs[i]];
                if (backwards) row(GLP_FX, 0, {{next[i][k], 1}});
            }
        }
        for (std::size_t i = 0; i <= count; ++i) {
            std::vector<Term> out, in;
            for (std::size_t k = 0; k <= count; ++k) {
                if (i == k) continue;
                out.push_back({next[i][k], 1});
                in.push_back({next[k][i], 1});
            }
            row(i == count ? GLP_UP : GLP_FX, i == count ? rows : 1, out);
            row(i == count ? GLP_UP : GLP_FX, i == count ? rows : 1, in);
        }
        for (std::size_t i = 0; i < count; ++i) {
            for (std::size_t k = 0; k < count; ++k) {
                if (i == k) continue;
                std::vector<Term> terms = work_begin(jobs[i], -1);
                terms.push_back({begins_[jobs[k]], 1});
                terms.push_back({next[i][k], -horizon_});
                row(GLP_LO, static_cast<double>(problem_.jobs[jobs[i]].work) - horizon_, terms);
            }
        }
        return next;
    }

    // A job sets up if it is the machine's first or comes right after one with another set-up.
    void add_machine(std::size_t machine) {
        std::vector<std::size_t> jobs;
        for (std::size_t i = 0; i < size(); ++i) {
            const auto& set_up = problem_.jobs[i].set_up;
            if (set_up && problem_.set_ups[*set_up].machine == machine) jobs.push_back(i);
        }
        if (jobs.empty()) return;
        const auto next = add_rows_of(jobs, 1);
        for (std::size_t k = 0; k < jobs.size(); ++k) {
            std::vector<Term> terms = {{sets_up_[jobs[k]], 1}, {next[jobs.size()][k], -1}};
            for (std::size_t i = 0; i < jobs.size(); ++i) {
                if (problem_.jobs[jobs[i]].set_up != problem_.jobs[jobs[k]].set_up)
                    terms.push_back({next[i][k], -1});
            }
            row(GLP_FX, 0, terms);
        }
    }

    Seconds minimum() {
        glp_iocp options;
        glp_init_iocp(&options);
        options.presolve = GLP_ON;
        options.msg_lev = GLP_MSG_OFF;
        options.cov_cuts = options.mir_cuts = options.gmi_cuts = GLP_ON;
        if (glp_intopt(programme_.get(), &options) != 0 || glp_mip_status(programme_.get()) != GLP_OPT) {
            throw std::runtime_error("GLPK has not proved an optimum");
        }
        return std::llround(glp_mip_obj_val(programme_.get()));
    }

    const Problem& problem_;
    std::unique_ptr<glp_prob, void (*)(glp_prob*)> programme_;
    double horizon_ = 0;
    int makespan_ = 0;
    std::vector<int> begins_, sets_up_;
    std::vector<std::vector<bool>> precedes_;
};

}  // namespace

Optimum exact_timetable(const Problem& problem) {
    return Programme(problem).solve();
}

}  // namespace rodwright::schedule
