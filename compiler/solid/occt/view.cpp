#include "compiler/solid/occt/view.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <mutex>

#include <Bnd_Box2d.hxx>
#include <HLRAlgo_EdgeIterator.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_Data.hxx>
#include <HLRBRep_EdgeData.hxx>
#include <HLRBRep_FaceData.hxx>
#include <HLRBRep_FaceIterator.hxx>
#include <HLRBRep_ShapeBounds.hxx>
#include <HLRTopoBRep_OutLiner.hxx>

#include "compiler/solid/occt/guard.hpp"
#include "compiler/solid/occt/normals.hpp"
#include "compiler/solid/occt/shapes.hpp"
#include "compiler/solid/paper_lines.hpp"

namespace rodwright::occt {

namespace {

gp_Dir direction_of(const Point3& vector) {
    return {vector[0], vector[1], vector[2]};
}

HLRAlgo_Projector projector_for(const View& view) {
    const gp_Dir towards = direction_of(view.towards);
    const gp_Dir right = direction_of(view.up).Crossed(towards);
    return HLRAlgo_Projector(gp_Ax2(gp_Pnt(), towards, right));
}

// True if the face is seen edge-on along the edge: it turns away from the viewer there.
bool edge_on(const BRepAdaptor_Curve& edge, const TopoDS_Face& face, const gp_Dir& towards) {
    constexpr double least_sine = 1e-6;
    const double middle = (edge.FirstParameter() + edge.LastParameter()) / 2;
    const auto normal = outward_normal(edge.Edge(), face, middle);
    return normal && std::abs(normal->Dot(towards)) < least_sine;
}

class Reader {
  public:
    Reader(HLRBRep_Algo& algorithm, const gp_Dir& towards, bool with_hidden)
        : data_(algorithm.DataStructure()), towards_(towards), with_hidden_(with_hidden) {}

    void read(const HLRBRep_ShapeBounds& bounds, std::uint32_t tag) {
        int v1 = 0, v2 = 0, e1 = 0, e2 = 0, f1 = 0, f2 = 0;
        bounds.Bounds(v1, v2, e1, e2, f1, f2);
        // An edge that points at the viewer is a point on the paper.
        for (int i = e1; i <= e2; ++i) edge(i).Used(edge(i).Vertical());
        for (int i = f1; i <= f2; ++i) read_face(data_->FDataArray().ChangeValue(i), tag);
    }

    std::vector<ViewLine> lines() && { return std::move(lines_); }

  private:
    HLRBRep_EdgeData& edge(int index) { return data_->EDataArray().ChangeValue(index); }

    void read_face(HLRBRep_FaceData& face, std::uint32_t tag) {
        HLRBRep_FaceIterator it;
        for (it.InitEdge(face); it.MoreEdge(); it.NextEdge()) {
            HLRBRep_EdgeData& each = edge(it.Edge());
            if (each.Used() || it.IsoLine()) continue;
            each.Used(Standard_True);
            ViewLine line;
            line.tag = tag;
            line.line_class = class_of(it, each, face);
            read_edge(each, line);
        }
    }

    // A smooth edge (or the seam of a bore) in which a round face turns away from the viewer is its outline.
    LineClass class_of(const HLRBRep_FaceIterator& at, HLRBRep_EdgeData& edge, HLRBRep_FaceData& face) const {
        if (at.Internal()) return LineClass::outline;
        if (!edge.Rg1Line()) return LineClass::sharp;
        const TopoDS_Face& shape = face.Geometry().Surface().Face();
        if (edge_on(edge.ChangeGeometry().Curve(), shape, towards_)) return LineClass::outline;
        return edge.RgNLine() ? LineClass::seam : LineClass::smooth;
    }

    void read_edge(HLRBRep_EdgeData& each, ViewLine line) {
        double from = 0;
        double to = 0;
        Standard_ShortReal slack = 0;
        HLRAlgo_EdgeIterator it;
        for (it.InitVisible(each.Status()); it.MoreVisible(); it.NextVisible()) {
            it.Visible(from, slack, to, slack);
            add(each.Geometry(), from, to, line);
        }
        if (!with_hidden_) return;
        line.visible = false;
        for (it.InitHidden(each.Status()); it.MoreHidden(); it.NextHidden()) {
            it.Hidden(from, slack, to, slack);
            add(each.Geometry(), from, to, line);
        }
    }

    void add(const HLRBRep_Curve& curve, double from, double to, ViewLine line) {
        const auto at = [&](double parameter) {
            const gp_Pnt2d point = curve.Value(parameter);
            return PaperPoint{point.X(), point.Y()};
        };
        const bool straight = curve.GetType() == GeomAbs_Line;
        set_shape(line, straight ? std::vector{at(from), at(to)} : sample(at, from, to));
        lines_.push_back(std::move(line));
    }

    Handle(HLRBRep_Data) data_;
    gp_Dir towards_;
    bool with_hidden_;
    std::vector<ViewLine> lines_;
};

// Looking for outlines takes most of the time. A solid that has none within its faces, as most have none when
// looked at along an axis, is its own outlined shape.
Handle(HLRTopoBRep_OutLiner) outliner_for(const TopoDS_Shape& shape, bool outlines) {
    if (outlines) return new HLRTopoBRep_OutLiner(shape);
    return new HLRTopoBRep_OutLiner(shape, shape);
}

// True if outlines have to be looked for.
bool load(HLRBRep_Algo& algorithm, const std::vector<PlacedSolid>& solids, const gp_Dir& towards) {
    bool any = false;
    for (const PlacedSolid& each : solids) {
        const TopoDS_Shape shape = placed_shape(each);
        const bool outlines = outline_inside_a_face(shape, towards);
        algorithm.Load(outliner_for(shape, outlines));
        any |= outlines;
    }
    return any;
}

// The search for outlines (Contap_HContTool) keeps numbers in static variables: one thread at a time. The
// lock is outside of what is guarded, as a signal there jumps over destructors.
bool update(HLRBRep_Algo& algorithm, bool outlines) {
    static std::mutex searching;
    std::unique_lock<std::mutex> lock;
    if (outlines) lock = std::unique_lock(searching);
    return guarded([&] { algorithm.Update(); });
}

std::vector<ViewLine> hide_and_read(HLRBRep_Algo& algorithm, const std::vector<PlacedSolid>& solids,
                                    const gp_Dir& towards, bool with_hidden) {
    algorithm.Hide();
    Reader reader(algorithm, towards, with_hidden);
    for (std::size_t i = 0; i < solids.size(); ++i) {
        reader.read(algorithm.ShapeBounds(static_cast<int>(i) + 1), solids[i].tag);
    }
    return std::move(reader).lines();
}

// Of solids that may cover one another.
std::vector<ViewLine> project_together(const std::vector<PlacedSolid>& solids, const View& from,
                                       bool with_hidden) {
    const Handle(HLRBRep_Algo) algorithm = new HLRBRep_Algo();
    gp_Dir towards;
    bool outlines = false;
    const bool loaded = guarded([&] {
        towards = direction_of(from.towards);
        outlines = load(*algorithm, solids, towards);
        algorithm->Projector(projector_for(from));
    });
    std::vector<ViewLine> lines;
    const bool read = loaded && update(*algorithm, outlines) &&
                      guarded([&] { lines = hide_and_read(*algorithm, solids, towards, with_hidden); });
    return read ? lines : std::vector<ViewLine>();
}

// The rectangle of the paper that holds a solid.
Bnd_Box2d on_paper(const PlacedSolid& placed, const gp_Trsf& to_paper) {
    const Bnd_Box box =
        held(*placed.solid).rough_box().Transformed(transform_of(placed.pose)).Transformed(to_paper);
    Bnd_Box2d rectangle;
    rectangle.Update(box.CornerMin().X(), box.CornerMin().Y(), box.CornerMax().X(), box.CornerMax().Y());
    return rectangle;
}

// Solids in groups, so that none covers any of another group on the paper: every pair of solids costs time
// that grows with all that is loaded. Each group in the order given.
std::vector<std::vector<PlacedSolid>> apart_on_paper(const std::vector<PlacedSolid>& solids,
                                                     const View& from) {
    std::vector<Bnd_Box2d> boxes;
    guarded([&] {
        const gp_Trsf to_paper = projector_for(from).Transformation();
        for (const PlacedSolid& each : solids) boxes.push_back(on_paper(each, to_paper));
    });
    if (boxes.size() != solids.size()) return {solids};
    std::vector<std::size_t> group(solids.size());  // the least index of the group
    for (std::size_t i = 0; i < solids.size(); ++i) {
        group[i] = i;
        for (std::size_t j = 0; j < i; ++j) {
            if (group[j] == group[i] || boxes[i].IsOut(boxes[j])) continue;
            const auto [kept, gone] = std::minmax(group[i], group[j]);
            std::replace(group.begin(), group.begin() + static_cast<std::ptrdiff_t>(i) + 1, std::size_t{gone},
                         std::size_t{kept});
        }
    }
    std::map<std::size_t, std::vector<PlacedSolid>> groups;
    for (std::size_t i = 0; i < solids.size(); ++i) groups[group[i]].push_back(solids[i]);
    std::vector<std::vector<PlacedSolid>> found;
    for (auto& [first, members] : groups) found.push_back(std::move(members));
    return found;
}

}  // namespace

std::vector<ViewLine> project(const std::vector<PlacedSolid>& solids, const View& from, bool with_hidden) {
    std::vector<ViewLine> lines;
    for (const std::vector<PlacedSolid>& group : apart_on_paper(solids, from)) {
        std::vector<ViewLine> of_group = project_together(group, from, with_hidden);
        lines.insert(lines.end(), std::make_move_iterator(of_group.begin()),
                     std::make_move_iterator(of_group.end()));
    }
    return lines;
}

}  // namespace rodwright::occt
