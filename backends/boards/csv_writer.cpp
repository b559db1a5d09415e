#include <fmt/format.h>

#include "backends/boards/writers.hpp"
#include "backends/csv.hpp"

namespace rodwright {

std::string buying_csv(const WoodPlan& plan) {
    std::string text = csv_record({"count", "what", "board_feet", "price", "money"});
    for (const Purchase& purchase : plan.purchases) {
        text += csv_record({std::to_string(purchase.count), purchase.text,
                            fmt::format("{:.2f}", purchase.board_feet.get_d()),
                            fmt::format("{:.2f}", purchase.price.get_d()), plan.money});
    }
    return text;
}

}  // namespace rodwright
