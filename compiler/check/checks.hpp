// What check_table.cpp lists; one file each.
#pragma once

#include "compiler/check/check_table.hpp"

namespace rodwright {

void check_overlap(const CheckInput& input, Findings& findings);    // fit/overlap.cpp
void check_assembly(const CheckInput& input, Findings& findings);   // assembly.cpp
void check_gaps(const CheckInput& input, Findings& findings);       // fit/gaps.cpp
void check_walls(const CheckInput& input, Findings& findings);      // fit/walls.cpp
void check_loose(const CheckInput& input, Findings& findings);      // fit/loose.cpp
void check_made(const CheckInput& input, Findings& findings);       // fit/made.cpp
void check_rows(const CheckInput& input, Findings& findings);       // fit/rows.cpp
void check_movement(const CheckInput& input, Findings& findings);   // movement/movement.cpp
void check_strength(const CheckInput& input, Findings& findings);   // strength/check_strength.cpp
void check_stability(const CheckInput& input, Findings& findings);  // stability/stability.cpp
void check_people(const CheckInput& input, Findings& findings);     // people/people.cpp
void check_wood(const CheckInput& input, Findings& findings);       // wood/wood.cpp

}  // namespace rodwright
