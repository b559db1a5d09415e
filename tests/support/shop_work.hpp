// Made-up scheduling problems: some that look like a piece of furniture, others small and without any sense.
#pragma once

#include "compiler/workplan/schedule/problem.hpp"

namespace rodwright::schedule {

struct ShopWork {
    int parts = 40;
    std::size_t workers = 1;
    std::optional<Seconds> day;
};

// Kinds of parts are milled, one set-up after the other, then joined, shaped and sanded; some panels and all
// frames are glued up, which takes 1800 to 86400 s to dry; two or three coats of finish come last. About 1.3
// jobs and half a set-up a part.
Problem shop_work(const ShopWork& size, std::uint64_t seed);

// Up to `jobs` jobs with random precedences, waits and set-ups on two machines.
Problem small_work(int jobs, std::size_t workers, std::uint64_t seed);

}  // namespace rodwright::schedule
