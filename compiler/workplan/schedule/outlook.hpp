// How late all will be done at best, seen from a state of the shop: what guides the search. An estimate, not
// a bound: nights are spread over the work that is left, and set-ups are counted once for each setting not on
// its machine.
#pragma once

#include "compiler/workplan/schedule/partial.hpp"

namespace rodwright::schedule {

class Outlook {
  public:
    explicit Outlook(const Network& network);

    void look(const Partial& partial);

    // The end of all if what was looked at goes on with `placing`, and with it set-ups that take `more`
    // become necessary.
    Seconds after(const Placing& placing, Seconds more) const;

  private:
    // Work that has to be done before the last of these tasks ends, whose tail follows.
    struct Load {
        Seconds work = 0;
        Seconds tail = 0;
    };

    Seconds weight(const Load& load) const;
    Seconds end_of(Seconds now, const Load& load) const;
    void take_up(std::size_t task);
    void find_heaviest();
    void find_longest();

    const Network* network_;
    std::vector<std::size_t> urgent_;       // tasks by tail, longest first
    std::vector<std::size_t> left_;         // those not taken yet, in the same order
    std::vector<Load> loads_;               // of the first ones of left_, up to each
    std::vector<Load> heaviest_before_;     // by task: of loads_ before it
    std::vector<Load> heaviest_from_;       // by task: of loads_ from it on
    std::vector<bool> counted_;             // by set-up
    std::array<std::size_t, 2> longest_{};  // the two tasks left with most work and tail
    Seconds clocks_ = 0;                    // sum over workers
    std::array<Seconds, 2> free_{};
};

}  // namespace rodwright::schedule
