#include "compiler/solid/remembering_kernel.hpp"

#include <map>
#include <mutex>
#include <tuple>

namespace rodwright {

namespace {

class RememberingKernel final : public SolidKernel {
  public:
    explicit RememberingKernel(const SolidKernel& kernel) : kernel_(kernel) {}

    SolidRef build(const Piece& piece, const Kind& kind, Diagnostics& diagnostics) const override {
        return kernel_.build(piece, kind, diagnostics);
    }
    double volume(const Solid& solid) const override { return kernel_.volume(solid); }
    double surface_area(const Solid& solid) const override { return kernel_.surface_area(solid); }
    Point3 centre_of_mass(const Solid& solid) const override { return kernel_.centre_of_mass(solid); }
    Bounds bounds(const Solid& solid) const override { return kernel_.bounds(solid); }
    double overlap(const PlacedSolid& a, const PlacedSolid& b) const override {
        return kernel_.overlap(a, b);
    }

    // What is cut off is kept too, so that no later solid stands at its address.
    SolidRef within(const SolidRef& solid, const Bounds& box) const override {
        return remembered(within_, std::tuple(solid.get(), box.low, box.high),
                          [&] { return kernel_.within(solid, box); });
    }
    std::vector<ViewLine> view(const std::vector<PlacedSolid>& solids, const View& from,
                               bool with_hidden) const override {
        std::vector<Placed> placed;
        for (const PlacedSolid& each : solids)
            placed.emplace_back(each.solid.get(), each.pose.columns, each.pose.move, each.tag);
        return remembered(views_, std::tuple(std::move(placed), from.towards, from.up, with_hidden),
                          [&] { return kernel_.view(solids, from, with_hidden); });
    }
    std::vector<Triangle> triangles(const Solid& solid, double tolerance) const override {
        return remembered(triangles_, std::tuple(&solid, tolerance),
                          [&] { return kernel_.triangles(solid, tolerance); });
    }

  private:
    using Placed = std::tuple<const Solid*, std::array<Point3, 3>, Point3, std::uint32_t>;

    template <typename Key, typename Value, typename Ask>
    Value remembered(std::map<Key, Value>& known, const Key& key, Ask ask) const {
        {
            const std::lock_guard lock(mutex_);
            const auto found = known.find(key);
            if (found != known.end()) return found->second;
        }
        Value answer = ask();  // by several threads at once; the first answer is the one that is kept
        const std::lock_guard lock(mutex_);
        return known.emplace(key, std::move(answer)).first->second;
    }

    const SolidKernel& kernel_;
    mutable std::mutex mutex_;
    mutable std::map<std::tuple<const Solid*, Point3, Point3>, SolidRef> within_;
    mutable std::map<std::tuple<std::vector<Placed>, Point3, Point3, bool>, std::vector<ViewLine>> views_;
    mutable std::map<std::tuple<const Solid*, double>, std::vector<Triangle>> triangles_;
};

}  // namespace

std::unique_ptr<const SolidKernel> remembering(const SolidKernel& kernel) {
    return std::make_unique<RememberingKernel>(kernel);
}

}  // namespace rodwright
