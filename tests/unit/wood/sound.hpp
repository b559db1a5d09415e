// Every fault that the independent checker finds in a plan fails the test.
#pragma once

#include <doctest/doctest.h>

#include "tests/support/wood.hpp"
#include "tests/support/wood_plan_check.hpp"

inline void check_sound(const rodwright::testing::PlannedWood& planned, const rodwright::Piece& piece) {
    for (const std::string& fault : rodwright::testing::faults_of(planned.plan, piece, planned.supply)) {
        FAIL_CHECK(fault);
    }
}
