#include "compiler/stock/cutting/solve.hpp"

#include <stdexcept>

#include "compiler/stock/cutting/guillotine/solve.hpp"
#include "compiler/stock/cutting/linear/solve.hpp"
#include "compiler/stock/cutting/tidy.hpp"

namespace rodwright::cutting {
namespace {

void require(bool condition, const char* what) {
    if (!condition) throw std::invalid_argument(what);
}

bool sound(Size size) {
    const auto within = [](int extent) { return extent > 0 && extent <= max_size; };
    return within(size.along[0]) && within(size.along[1]);
}

void validate(const Problem& problem) {
    for (const int kerf : problem.kerf.along) require(kerf >= 0 && kerf <= max_size, "kerf");
    require(!problem.rule.stages || *problem.rule.stages > 0, "number of stages");
    for (const int shortest : problem.rule.shortest_cut.along)
        require(shortest >= 0 && shortest <= max_size, "shortest cut");
    for (const StockPiece& piece : problem.stock) {
        require(sound(piece.size), "size of a stock piece");
        require(piece.cost >= 0 && piece.available.value_or(0) >= 0, "cost or number of a stock piece");
        for (const auto& [area, faces] : piece.defects) {
            require(sound(area.size) && area.corner.along[0] >= 0 && area.corner.along[1] >= 0 &&
                        faces != Faces::none,
                    "defect");
        }
    }
    for (const PartKind& part : problem.parts) {
        require(sound(part.size), "size of a part");
        require(part.quantity >= 0, "quantity of a part");
    }
}

}  // namespace

CuttingPlan solve(const Problem& problem, Effort effort) {
    validate(problem);
    CuttingPlan plan =
        linear::applies(problem) ? linear::solve(problem, effort) : guillotine::solve(problem, effort);
    tidy(problem, plan);
    return plan;
}

}  // namespace rodwright::cutting
