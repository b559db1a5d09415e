#include "tests/support/shop_work.hpp"

#include <algorithm>

#include "compiler/stock/cutting/random.hpp"

namespace rodwright::schedule {
namespace {

enum Machine : std::size_t { jointer, planer, table_saw, mortiser, router_table, drill_press };

using Numbers = std::vector<std::size_t>;

class Workshop {
  public:
    Workshop(const ShopWork& size, std::uint64_t seed) : size_(size), random_(seed) {
        problem_.workers = size.workers;
        problem_.day = size.day;
    }

    Problem make() {
        jointing_ = set_up(jointer, 4);
        for (int i = 0; i < 3; ++i) thicknesses_.push_back(set_up(planer, 3));
        for (std::size_t part = 0; part < static_cast<std::size_t>(size_.parts);) {
            Numbers kind;
            for (int i = random_.below(6); i >= 0 && part < static_cast<std::size_t>(size_.parts); --i) {
                kind.push_back(part++);
            }
            make_kind(kind);
        }
        glue_up();
        finish();
        return problem_;
    }

  private:
    Seconds minutes(int from, int to) { return 60 * (from + random_.below(to - from + 1)); }

    std::size_t set_up(Machine machine, int least_minutes) {
        problem_.set_ups.push_back({machine, minutes(least_minutes, 2 * least_minutes)});
        return problem_.set_ups.size() - 1;
    }

    // One of those made before or a new one.
    std::size_t shared_set_up(Numbers& known, Machine machine, int least_minutes) {
        if (!known.empty() && random_.below(3) > 0) {
            return known[static_cast<std::size_t>(random_.below(static_cast<int>(known.size())))];
        }
        known.push_back(set_up(machine, least_minutes));
        return known.back();
    }

    std::size_t job(std::size_t stage, const Numbers& parts, std::optional<std::size_t> set_up,
                    Seconds each) {
        Job job;
        job.work = each * static_cast<Seconds>(parts.size());
        job.set_up = set_up;
        job.rank = stage;
        job.parts = parts;
        problem_.jobs.push_back(job);
        return problem_.jobs.size() - 1;
    }

    void follow(std::size_t before, std::size_t after, Seconds wait = 0) {
        problem_.precedences.push_back({before, after, wait});
    }

    // What a rule says of a part, rules say again of what comes later.
    void chain(const Numbers& jobs) {
        for (std::size_t i = 0; i < jobs.size(); ++i) {
            for (std::size_t k = i + 1; k < jobs.size() && k < i + 5; ++k) follow(jobs[i], jobs[k]);
        }
    }

    void make_kind(const Numbers& parts) {
        Numbers jobs;
        jobs.push_back(job(0, parts, jointing_, 120));
        jobs.push_back(job(1, parts, thicknesses_[static_cast<std::size_t>(random_.below(3))], 90));
        jobs.push_back(job(2, parts, shared_set_up(widths_, table_saw, 4), 60));
        if (random_.one_in(6)) {
            const std::size_t panel = job(3, parts, std::nullopt, minutes(8, 20));
            jobs.push_back(panel);
            jobs.push_back(job(4, parts, std::nullopt, 300));
            follow(panel, jobs.back(), 1800 * (1 + random_.below(48)));
        }
        jobs.push_back(job(5, parts, shared_set_up(lengths_, table_saw, 6), 60));
        if (random_.one_in(2)) {
            jobs.push_back(job(6, parts, std::nullopt, 180));
            jobs.push_back(job(7, parts, shared_set_up(mortises_, mortiser, 12), minutes(3, 9)));
        } else if (random_.one_in(2)) {
            jobs.push_back(job(8, parts, set_up(table_saw, 15), minutes(3, 9)));
        }
        if (random_.one_in(3)) jobs.push_back(job(9, parts, shared_set_up(rounds_, router_table, 8), 240));
        if (random_.one_in(5)) jobs.push_back(job(10, parts, shared_set_up(holes_, drill_press, 8), 120));
        jobs.push_back(job(11, parts, std::nullopt, minutes(3, 10)));
        chain(jobs);
        kinds_.push_back({parts, jobs.back()});
    }

    void glue_up() {
        while (kinds_.size() > 1) {
            const std::size_t members =
                std::min(kinds_.size(), static_cast<std::size_t>(2 + random_.below(4)));
            Kind frame;
            const std::size_t dry_fit = job(12, {}, std::nullopt, 0);
            frame.last = job(13, {}, std::nullopt, 0);
            for (std::size_t i = 0; i < members; ++i) {
                follow(kinds_[i].last, dry_fit, kinds_[i].wait);
                follow(kinds_[i].last, frame.last, kinds_[i].wait);
                frame.parts.insert(frame.parts.end(), kinds_[i].parts.begin(), kinds_[i].parts.end());
            }
            std::sort(frame.parts.begin(), frame.parts.end());
            follow(dry_fit, frame.last);
            problem_.jobs[dry_fit].parts = problem_.jobs[frame.last].parts = frame.parts;
            problem_.jobs[dry_fit].work = minutes(5, 15);
            problem_.jobs[frame.last].work = minutes(10, 40);
            frame.wait = 1800 * (1 + random_.below(8));
            if (random_.one_in(4)) frame.wait = whole_day;
            kinds_.erase(kinds_.begin(), kinds_.begin() + static_cast<std::ptrdiff_t>(members));
            kinds_.push_back(frame);
        }
    }

    void finish() {
        std::size_t last = kinds_.front().last;
        Seconds wait = kinds_.front().wait;
        for (int coat = 2 + random_.below(2); coat > 0; --coat) {
            const std::size_t next = job(14, kinds_.front().parts, std::nullopt, 90);
            follow(last, next, wait);
            last = next;
            wait = 3600 * (4 + random_.below(21));
        }
        problem_.jobs[last].rest = wait;
    }

    struct Kind {
        Numbers parts;
        std::size_t last = 0;
        Seconds wait = 0;
    };

    ShopWork size_;
    cutting::Random random_;
    Problem problem_;
    std::size_t jointing_ = 0;
    Numbers thicknesses_, widths_, lengths_, mortises_, rounds_, holes_;
    std::vector<Kind> kinds_;
};

}  // namespace

Problem shop_work(const ShopWork& size, std::uint64_t seed) {
    return Workshop(size, seed).make();
}

Problem small_work(int jobs, std::size_t workers, std::uint64_t seed) {
    cutting::Random random(seed);
    Problem problem;
    problem.workers = workers;
    for (std::size_t i = 0; i < 4; ++i) problem.set_ups.push_back({i / 2, 1 + random.below(6)});
    for (int i = 0; i < jobs; ++i) {
        Job job;
        job.work = 1 + random.below(12);
        if (random.below(3) > 0) job.set_up = static_cast<std::size_t>(random.below(4));
        job.rank = static_cast<std::size_t>(random.below(jobs));
        for (std::size_t part = 0; part < 4; ++part) {
            if (random.one_in(2)) job.parts.push_back(part);
        }
        if (random.one_in(3)) job.rest = random.below(20);
        problem.jobs.push_back(job);
        for (int before = 0; before < i; ++before) {
            if (!random.one_in(4)) continue;
            const Seconds wait = random.one_in(2) ? random.below(25) : 0;
            problem.precedences.push_back(
                {static_cast<std::size_t>(before), static_cast<std::size_t>(i), wait});
        }
    }
    return problem;
}

}  // namespace rodwright::schedule
