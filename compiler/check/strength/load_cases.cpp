#include "compiler/check/strength/load_cases.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace rodwright::strength {

namespace {

constexpr double least_share = 0.3;  // of the largest flat part: a shelf, not a ledge
constexpr double least_width = 30;   // mm
constexpr double level = 0.5;        // mm: faces at one height

Box3 box_of(const Piece& piece, PartId part) {
    return box3_of(piece[part].body);
}

// Flat parts lie with their broad faces up and down.
std::vector<PartId> flat_parts(const Piece& piece) {
    std::vector<PartId> found;
    for (std::size_t i = 0; i < piece.parts.size(); ++i) {
        const PlacedPart part = placed_part(piece, static_cast<PartId>(i));
        if (std::abs(part.axes.col(2).z()) > 0.5 && part.size.y() >= least_width)
            found.push_back(static_cast<PartId>(i));
    }
    return found;
}

double area_of(const Piece& piece, PartId part) {
    const Vec3 size = box_of(piece, part).sizes();
    return size.x() * size.y();
}

// The point of a rectangle in space: its middle, the middle of a long side, or of a short one; of two like
// sides the nearer to the front, the left, the bottom.
Vec3 place_on(const Box3& face, std::string_view place) {
    Vec3 at = face.center();
    if (place == "middle") return at;
    std::array<Eigen::Index, 3> axes = {0, 1, 2};
    std::ranges::stable_sort(
        axes, [&](Eigen::Index a, Eigen::Index b) { return face.sizes()(a) > face.sizes()(b); });
    const Eigen::Index across = place == "end" ? axes[0] : axes[1];
    at(across) = face.min()(across);
    return at;
}

Box3 face_box(const Box3& body, Face face) {
    Box3 box = body;
    const auto axis = static_cast<Eigen::Index>(axis_of(face));
    box.min()(axis) = box.max()(axis) = is_far(face) ? body.max()(axis) : body.min()(axis);
    return box;
}

// The carrier nearest to a point, and the point of it.
PartPoint nearest_carrier(const Piece& piece, const std::vector<PartId>& carriers, const Vec3& at) {
    const auto far = [&](PartId part) { return box_of(piece, part).squaredExteriorDistance(at); };
    const PartId nearest = *std::ranges::min_element(carriers, {}, far);
    const Box3 box = box_of(piece, nearest);
    return {nearest, at.cwiseMax(box.min()).cwiseMin(box.max())};
}

// Where people sit, or what stands there: spread evenly along the longer side.
std::vector<Vec3> places_for(const Box3& all, std::string_view place, long people) {
    if (people == 1) return {place_on(all, place)};
    const Eigen::Index along = all.sizes().x() >= all.sizes().y() ? 0 : 1;
    std::vector<Vec3> places;
    for (long i = 0; i < people; ++i) {
        Vec3 at = place_on(all, place);
        at(along) = all.min()(along) +
                    all.sizes()(along) * (static_cast<double>(i) + 0.5) / static_cast<double>(people);
        places.push_back(at);
    }
    return places;
}

std::string_view word_of(LoadPlace place) {
    if (place == LoadPlace::edge) return "edge";
    return place == LoadPlace::end ? "end" : "middle";
}

Case case_of(const Piece& piece, const Use& use, const UseCase& from, const std::vector<PartId>& carriers) {
    Case made;
    made.name = fmt::format("{}: {}", use.what, from.name);
    made.source = from.source;
    made.lasting = made.sag = from.lasting;
    made.push = from.push > 0;
    made.carriers = carriers;
    made.where = use.where;
    Box3 all;
    for (const PartId part : carriers) all.extend(face_box(box_of(piece, part), Face::top));
    if (from.down > 0) {
        for (const Vec3& at : places_for(all, word_of(from.at), use.people))
            made.forces.push_back({nearest_carrier(piece, carriers, at), Vec3(0, 0, -from.down)});
    }
    if (from.push > 0) {
        Vec3 force = Vec3::Zero();
        force(static_cast<Eigen::Index>(from.along)) = from.push;
        made.forces.push_back({nearest_carrier(piece, carriers, all.center()), force});
    }
    for (const PartId part : carriers) {
        const double width = placed_part(piece, part).size.y();
        const double load = from.every_metre / 1e3 + from.every_square_metre * width / 1e6;
        if (load > 0) made.spread.push_back({part, load});
    }
    return made;
}

void report_unknown(const Use& use, const StrengthData& data, Diagnostics& diagnostics) {
    std::vector<std::string> words;
    for (const UseLoads& each : data.uses) {
        words.push_back(each.word);
        std::ranges::replace(words.back(), '_', ' ');
    }
    const std::string said = use.detail.empty() ? use.what : use.what + " " + use.detail;
    diagnostics.add(
        diagnose(Code::unknown_use, use.where, fmt::format("nothing is known of a piece used as `{}`", said))
            .hint(fmt::format("`use` with one of {}; `load` says any other load", fmt::join(words, ", "))));
}

void add_use(const Piece& piece, const Use& use, const StrengthData& data, Diagnostics& diagnostics,
             std::vector<Case>& cases) {
    const UseLoads* loads = data.find(use_word(use));
    if (loads == nullptr) return report_unknown(use, data, diagnostics);
    const std::vector<PartId> carriers = carriers_of(piece, use, *loads);
    if (carriers.empty()) {
        diagnostics.add(
            diagnose(Code::strength_unknown, use.where,
                     fmt::format("no part lies flat, so nothing carries what a {} has to", use.what))
                .hint(fmt::format("name the parts: `use {} on seat`", use.what)));
        return;
    }
    for (const UseCase& each : loads->cases) cases.push_back(case_of(piece, use, each, carriers));
}

Case own_loads(const Piece& piece) {
    Case made;
    made.name = "the loads of the design";
    made.source = "as the design says; taken to act downwards, together and for a short time";
    made.sag = true;
    made.where = piece.loads.front().where;
    for (const Load& load : piece.loads) {
        const Box3 face = face_box(box_of(piece, load.part), load.face);
        made.forces.push_back({{load.part, place_on(face, load.place)}, Vec3(0, 0, -load.force.to_double())});
        made.carriers.push_back(load.part);
    }
    return made;
}

}  // namespace

std::string use_word(const Use& use) {
    return use.detail.empty() ? use.what : use.what + "_" + use.detail;
}

std::vector<PartId> carriers_of(const Piece& piece, const Use& use, const UseLoads& loads) {
    if (!use.on.empty()) return use.on;
    std::vector<PartId> flat = flat_parts(piece);
    if (flat.empty()) return flat;
    const auto area = [&](PartId part) { return area_of(piece, part); };
    const auto top = [&](PartId part) { return box_of(piece, part).max().z(); };
    const double largest = area(*std::ranges::max_element(flat, {}, area));
    const double highest = top(*std::ranges::max_element(flat, {}, top));
    std::erase_if(flat, [&](PartId part) {
        return loads.every ? area(part) < least_share * largest : top(part) < highest - level;
    });
    return flat;
}

std::vector<Case> load_cases(const Piece& piece, const StrengthData& data, Diagnostics& diagnostics) {
    std::vector<Case> cases;
    if (!piece.loads.empty()) cases.push_back(own_loads(piece));
    for (const Use& use : piece.uses) add_use(piece, use, data, diagnostics, cases);
    return cases;
}

}  // namespace rodwright::strength
