#include "compiler/stock/cutting/cut_tree.hpp"

#include <algorithm>

namespace rodwright::cutting {

std::string_view bound_method_name(BoundMethod method) {
    switch (method) {
        case BoundMethod::area:
            return "area";
        case BoundMethod::stock_choice:
            return "lengths, widths and areas";
        case BoundMethod::dual_feasible:
            return "dual feasible functions";
        case BoundMethod::column_generation:
            return "column generation";
        case BoundMethod::joins:
            return "all ways to join the parts";
    }
    return {};
}

bool CuttingPlan::complete() const {
    return std::all_of(missing.begin(), missing.end(), [](int count) { return count == 0; });
}

}  // namespace rodwright::cutting
