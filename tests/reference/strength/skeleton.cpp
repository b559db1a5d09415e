#include "tests/reference/strength/skeleton.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "compiler/check/strength/placed.hpp"

namespace rodwright::testing {

namespace {

using frame::Vec3;
using strength::PlacedPart;

constexpr double piece_length = 120;  // mm of bar for one beam, at the most
constexpr double least_pieces = 4;    // from joint to joint: an even number has a node in the middle
constexpr double same_place = 0.5;    // mm along a bar

struct Bar {
    PlacedPart placed;
    std::map<double, std::size_t> nodes;  // by place along the part
};

std::size_t node_at(Skeleton& skeleton, Bar& bar, double along, const std::string& name) {
    for (const auto& [place, node] : bar.nodes) {
        if (std::abs(place - along) < same_place) return node;
    }
    frame::Node node;
    node.name = name;
    node.at = bar.placed.to_piece(Vec3(along, bar.placed.size.y() / 2, bar.placed.size.z() / 2));
    skeleton.model.nodes.push_back(node);
    return bar.nodes[along] = skeleton.model.nodes.size() - 1;
}

void add_beams(Skeleton& skeleton, const Bar& bar, const strength::Elastic& elastic,
               const std::string& name) {
    std::vector<std::size_t> along;
    const std::size_t first_beam = skeleton.model.beams.size();
    for (auto place = bar.nodes.begin(); place != bar.nodes.end(); ++place) {
        const auto next = std::next(place);
        along.push_back(place->second);
        if (next == bar.nodes.end()) break;
        const Vec3 from = skeleton.model.nodes[place->second].at;
        const Vec3 step = skeleton.model.nodes[next->second].at - from;
        const double pieces = std::max(least_pieces, 2 * std::ceil(step.norm() / piece_length / 2));
        for (double i = 0; i < pieces; ++i) {
            frame::Beam beam;
            beam.name = name;
            beam.start = along.back();
            beam.end = next->second;
            if (i + 1 < pieces) {
                frame::Node node;
                node.name = name;
                node.at = from + step * (i + 1) / pieces;
                beam.end = skeleton.model.nodes.size();
                skeleton.model.nodes.push_back(node);
                along.push_back(beam.end);
            }
            beam.across = bar.placed.axes.col(1);
            beam.modulus = elastic.along;
            const double w = bar.placed.size.y();
            const double h = bar.placed.size.z();
            beam.section.area = w * h;
            beam.section.inertia_y = w * h * h * h / 12;
            beam.section.inertia_z = h * w * w * w / 12;
            skeleton.model.beams.push_back(beam);
        }
    }
    skeleton.bars.push_back({name, along, first_beam});
}

}  // namespace

std::size_t Skeleton::node(const std::string& part, double share) const {
    const auto bar = std::ranges::find(bars, part, &SkeletonBar::part);
    REQUIRE(bar != bars.end());
    const Vec3 from = model.nodes[bar->nodes.front()].at;
    const Vec3 wanted = from + share * (model.nodes[bar->nodes.back()].at - from);
    return *std::ranges::min_element(bar->nodes, {},
                                     [&](std::size_t i) { return (model.nodes[i].at - wanted).norm(); });
}

bool Skeleton::shared(std::size_t node) const {
    return std::ranges::count_if(bars, [&](const SkeletonBar& bar) {
               return std::ranges::find(bar.nodes, node) != bar.nodes.end();
           }) > 1;
}

Skeleton skeleton_of(const Piece& piece) {
    Skeleton skeleton;
    std::map<PartId, Bar> bars;
    const auto bar_of = [&](PartId part) -> Bar& {
        return bars.try_emplace(part, Bar{strength::placed_part(piece, part), {}}).first->second;
    };
    for (const Joint& joint : piece.joints) {
        const JointMember& end = joint.members[0];
        const JointMember& other = joint.members[1];
        if (end.form != MemberForm::end || other.form == MemberForm::end) continue;
        Bar& into = bar_of(other.part);
        const double place = into.placed.to_own(strength::vec3_of(joint.frame.origin)).x();
        const std::size_t node = node_at(skeleton, into, place, piece[other.part].name);
        Bar& bar = bar_of(end.part);
        const bool far = strength::unit(outward(end.face)).dot(bar.placed.grain()) > 0;
        bar.nodes[far ? bar.placed.size.x() : 0.0] = node;
    }
    const double floor = piece.box.low[Axis::tall].get_d();
    for (auto& [part, bar] : bars) {
        for (const double end : {0.0, bar.placed.size.x()}) {
            if (std::abs(bar.placed.grain().z()) < 0.5) continue;
            const std::size_t node = node_at(skeleton, bar, end, piece[part].name);
            if (std::abs(skeleton.model.nodes[node].at.z() - floor) < same_place)
                skeleton.model.nodes[node].fixed = {true, true, true, true, true, true};
        }
    }
    for (const auto& [part, bar] : bars) {
        const auto elastic = strength::elastic_of(piece, part);
        REQUIRE(elastic.has_value());
        add_beams(skeleton, bar, *elastic, piece[part].name);
    }
    return skeleton;
}

}  // namespace rodwright::testing
