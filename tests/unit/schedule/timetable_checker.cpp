#include "tests/unit/schedule/timetable_checker.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace rodwright::schedule {
namespace {

class Checker {
  public:
    Checker(const Problem& problem, const Timetable& timetable) : problem_(problem), timetable_(timetable) {}

    std::vector<std::string> faults() {
        check_completeness();
        if (!faults_.empty()) return faults_;
        check_precedences();
        for (std::size_t worker = 0; worker < problem_.workers; ++worker) check_worker(worker);
        check_machines();
        for (const Entry& entry : timetable_.entries) check_length(entry);
        check_sums();
        return faults_;
    }

  private:
    void fault(std::string text) { faults_.push_back(std::move(text)); }
    const Job& job(const Entry& entry) const { return problem_.jobs[entry.job]; }

    void check_completeness() {
        Seconds last = 0;
        for (const Entry& entry : timetable_.entries) {
            if (entry.job >= problem_.jobs.size()) return fault("a job that is not there");
            if (!entry_of_.emplace(entry.job, entry).second)
                fault(fmt::format("job {} is done twice", entry.job));
            if (entry.worker >= problem_.workers) fault("a worker who is not there");
            if (entry.begin < last) fault("entries are not in order of begin");
            last = entry.begin;
        }
        if (entry_of_.size() != problem_.jobs.size()) fault("a job is left out");
    }

    void check_precedences() {
        for (const Precedence& p : problem_.precedences) {
            if (entry_of_.at(p.after).work_begins >= entry_of_.at(p.before).end + p.wait) continue;
            fault(fmt::format("job {} begins too early after job {}", p.after, p.before));
        }
    }

    void check_worker(std::size_t worker) {
        const Entry* last = nullptr;
        for (const Entry& entry : timetable_.entries) {
            if (entry.worker != worker) continue;
            if (last != nullptr && entry.begin < last->end)
                fault(fmt::format("two jobs at once: {}", entry.job));
            const std::vector<std::size_t> held =
                last == nullptr ? std::vector<std::size_t>{} : job(*last).parts;
            for (const std::size_t part : job(entry).parts) {
                if (std::find(held.begin(), held.end(), part) == held.end()) ++handling_;
            }
            last = &entry;
        }
    }

    // Entries at a machine, in order of begin; jobs of no length may begin together.
    void check_machines() {
        std::map<std::size_t, const Entry*> last;
        for (const Entry& entry : timetable_.entries) {
            if (!job(entry).set_up) {
                if (entry.sets_up) fault("a set-up for hand work");
                continue;
            }
            const std::size_t machine = problem_.set_ups[*job(entry).set_up].machine;
            const Entry* before = last[machine];
            if (before != nullptr && entry.begin < before->end)
                fault(fmt::format("machine {} is busy", machine));
            const bool needed = before == nullptr || *job(*before).set_up != *job(entry).set_up;
            if (needed != entry.sets_up) fault(fmt::format("set-up of job {}", entry.job));
            set_ups_ += entry.sets_up ? 1U : 0U;
            last[machine] = &entry;
        }
    }

    // Working time between two times, counted day by day.
    Seconds worked(Seconds from, Seconds to) const {
        if (!problem_.day) return to - from;
        Seconds sum = 0;
        for (Seconds day = from / whole_day; day * whole_day < to; ++day) {
            const Seconds morning = day * whole_day;
            sum += std::max(Seconds{0}, std::min(to, morning + *problem_.day) - std::max(from, morning));
        }
        return sum;
    }

    void check_length(const Entry& entry) {
        const Seconds set_up = entry.sets_up ? problem_.set_ups[*job(entry).set_up].work : 0;
        const Seconds block = set_up + job(entry).work;
        if (worked(entry.begin, entry.work_begins) != set_up ||
            worked(entry.work_begins, entry.end) != job(entry).work) {
            fault(fmt::format("job {} is too short or too long", entry.job));
        }
        if (problem_.day && block <= *problem_.day && entry.end - entry.begin != block) {
            fault(fmt::format("job {} would fit into a day and does not lie in one", entry.job));
        }
    }

    void check_sums() {
        Seconds makespan = 0;
        std::set<std::size_t> distinct;
        for (const Entry& entry : timetable_.entries) {
            makespan = std::max(makespan, entry.end + job(entry).rest);
            if (job(entry).set_up) distinct.insert(*job(entry).set_up);
        }
        if (makespan != timetable_.makespan) fault("makespan");
        if (set_ups_ != timetable_.set_ups) fault("number of set-ups");
        if (handling_ != timetable_.handling) fault("handling");
        if (timetable_.bound.set_ups != distinct.size()) fault("bound of set-ups");
        if (makespan < timetable_.bound.makespan) fault("shorter than its bound");
    }

    const Problem& problem_;
    const Timetable& timetable_;
    std::map<std::size_t, Entry> entry_of_;
    std::size_t handling_ = 0;
    std::size_t set_ups_ = 0;
    std::vector<std::string> faults_;
};

}  // namespace

std::vector<std::string> check_timetable(const Problem& problem, const Timetable& timetable) {
    return Checker(problem, timetable).faults();
}

}  // namespace rodwright::schedule
