#include "compiler/solid/occt/easing.hpp"

#include <mutex>

#include <BRepCheck_Analyzer.hxx>
#include <BRepFilletAPI_MakeChamfer.hxx>
#include <BRepFilletAPI_MakeFillet.hxx>

#include "compiler/solid/occt/guard.hpp"
#include "compiler/solid/occt/shapes.hpp"

namespace rodwright::occt {

namespace {

struct SizedEdge {
    TopoDS_Edge edge;
    double size;
};

template <typename Maker>
TopoDS_Shape run(Maker& maker, const std::vector<SizedEdge>& edges) {
    for (const SizedEdge& each : edges) maker.Add(each.size, each.edge);
    maker.Build();
    return maker.IsDone() ? maker.Shape() : TopoDS_Shape();
}

TopoDS_Shape attempt(const TopoDS_Shape& shape, FeatureOp op, const std::vector<SizedEdge>& edges) {
    if (op == FeatureOp::blend) {
        BRepFilletAPI_MakeFillet fillet(shape);
        return run(fillet, edges);
    }
    BRepFilletAPI_MakeChamfer chamfer(shape);
    return run(chamfer, edges);
}

// Easing a convex edge takes wood away, so a shape that is not smaller is wrong however valid it looks.
// Rounding (BlendFunc_ConstRad) keeps numbers in static variables: one thread at a time. The lock is outside
// of what is guarded, as a signal there jumps over destructors.
bool replace_by_eased(TopoDS_Shape& shape, FeatureOp op, const std::vector<SizedEdge>& edges) {
    static std::mutex easing;
    const std::lock_guard one_at_a_time(easing);
    TopoDS_Shape eased;
    bool good = false;
    const bool ran = guarded([&] {
        eased = attempt(shape, op, edges);
        if (eased.IsNull() || count_solids(eased) != count_solids(shape)) return;
        const double volume = volume_of(eased);
        good = volume > 0 && volume < volume_of(shape) && BRepCheck_Analyzer(eased).IsValid();
    });
    if (ran && good) shape = eased;
    return ran && good;
}

std::vector<TopoDS_Edge> find_edges(const TopoDS_Shape& shape, const BoxEdge& edge) {
    std::vector<TopoDS_Edge> edges;
    const bool ran = guarded([&] { edges = edges_of(shape, edge); });
    return ran ? edges : std::vector<TopoDS_Edge>();
}

// Returns how many stay sharp. An eased edge is no longer found, so the list is made anew after each.
int ease_singly(TopoDS_Shape& shape, FeatureOp op, const BoxEdge& where, double size) {
    std::size_t sharp = 0;
    for (;;) {
        const std::vector<TopoDS_Edge> edges = find_edges(shape, where);
        if (sharp >= edges.size()) return static_cast<int>(sharp);
        if (!replace_by_eased(shape, op, {{edges[sharp], size}})) ++sharp;
    }
}

}  // namespace

std::vector<Easing> ease(TopoDS_Shape& shape, FeatureOp op, const std::vector<const Feature*>& features) {
    std::vector<Easing> easings;
    std::vector<SizedEdge> all;
    for (const Feature* feature : features) {
        Easing easing{feature, 0, 0};
        for (const BoxEdge& where : feature->edges) {
            for (const TopoDS_Edge& edge : find_edges(shape, where)) {
                all.push_back({edge, feature->size.get_d()});
                ++easing.found;
            }
        }
        easings.push_back(easing);
    }
    if (all.empty() || replace_by_eased(shape, op, all)) return easings;
    for (Easing& easing : easings) {
        for (const BoxEdge& where : easing.feature->edges) {
            easing.sharp += ease_singly(shape, op, where, easing.feature->size.get_d());
        }
    }
    return easings;
}

}  // namespace rodwright::occt
