#include "compiler/check/check_table.hpp"

#include "compiler/check/checks.hpp"

namespace rodwright {

const std::vector<Check>& all_checks() {
    static const std::vector<Check> checks = {
        {"overlap", "parts that run into each other", {Code::run_into}, true, check_overlap},
        {"assembly",
         "whether the parts go together, one after the other",
         {Code::locked, Code::not_tried},
         true,
         check_assembly},
        {"gaps", "ends that stop short of what they should meet", {Code::gap_left}, true, check_gaps},
        {"walls",
         "wood that is left beside pockets",
         {Code::joints_meet, Code::breaks_through, Code::thin_wall, Code::short_grain},
         true,
         check_walls},
        {"loose", "parts that touch nothing", {Code::loose_part}, true, check_loose},
        {"rows", "rows that are not in the middle", {Code::uneven_row}, false, check_rows},
        {"made",
         "parts that are made, and no longer as they are drawn",
         {Code::made_wrong},
         false,
         check_made},
        {"movement",
         "room for wood to swell and shrink",
         {Code::no_room, Code::held_across},
         false,
         check_movement},
        {"strength",
         "stress, joints, sag and sway under what it carries",
         {Code::unknown_use, Code::part_overloaded, Code::joint_overloaded, Code::sags, Code::sways,
          Code::strength_unknown},
         false,
         check_strength},
        {"stability", "whether it stands", {Code::tips_over, Code::wants_anchor}, true, check_stability},
        {"wood",
         "grain, end grain and dust",
         {Code::short_grain, Code::end_grain_glue, Code::runs_out, Code::mind_the_dust},
         true,
         check_wood},
        {"people", "sizes for those who use it", {Code::unusual_size}, false, check_people},
    };
    return checks;
}

}  // namespace rodwright
