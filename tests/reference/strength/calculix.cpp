#include "tests/reference/strength/calculix.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <sstream>

#include "tests/support/scratch_folder.hpp"

namespace rodwright::testing {

namespace {

frame::Section brick(const RectangleOf& size) {
    const double w = size.width;
    const double h = size.height;
    const double area = w * h;
    return {
        area, area, area, w * h * h * h / 12, h * w * w * w / 12, std::pow(area, 3) / (3 * (w * w + h * h))};
}

frame::Beam as_brick(frame::Beam beam) {
    beam.section = brick(rectangle_of(beam.section));
    beam.shear_modulus = beam.modulus / 2;
    return beam;
}

std::string input_text(const frame::Model& model, const frame::LoadCase& loads) {
    std::string text = "*NODE,NSET=ALL\n";
    for (std::size_t i = 0; i < model.nodes.size(); ++i) {
        const frame::Vec3& at = model.nodes[i].at;
        text += fmt::format("{},{:.9g},{:.9g},{:.9g}\n", i + 1, at.x(), at.y(), at.z());
    }
    const std::size_t middles = model.nodes.size() + 1;
    for (std::size_t i = 0; i < model.beams.size(); ++i) {
        const frame::Vec3 at =
            (model.nodes[model.beams[i].start].at + model.nodes[model.beams[i].end].at) / 2;
        text += fmt::format("{},{:.9g},{:.9g},{:.9g}\n", middles + i, at.x(), at.y(), at.z());
    }
    for (std::size_t i = 0; i < model.beams.size(); ++i) {
        const frame::Beam& beam = model.beams[i];
        const RectangleOf size = rectangle_of(beam.section);
        text += fmt::format("*ELEMENT,TYPE=B32R,ELSET=E{0}\n{0},{1},{2},{3}\n", i + 1, beam.start + 1,
                            middles + i, beam.end + 1);
        text += fmt::format("*MATERIAL,NAME=M{}\n*ELASTIC\n{:.9g},0.\n", i + 1, beam.modulus);
        text += fmt::format("*BEAM SECTION,ELSET=E{0},MATERIAL=M{0},SECTION=RECT\n{1:.9g},{2:.9g}\n", i + 1,
                            size.width, size.height);
        text += fmt::format("{:.9g},{:.9g},{:.9g}\n", beam.across.x(), beam.across.y(), beam.across.z());
    }
    text += "*BOUNDARY\n";
    for (std::size_t i = 0; i < model.nodes.size(); ++i) {
        for (std::size_t j = 0; j < 6; ++j) {
            if (model.nodes[i].fixed[j]) text += fmt::format("{0},{1},{1}\n", i + 1, j + 1);
        }
    }
    text += "*STEP\n*STATIC\n*CLOAD\n";
    for (const frame::NodeLoad& load : loads.on_nodes) {
        for (int j = 0; j < 6; ++j) {
            if (load.force(j) != 0)
                text += fmt::format("{},{},{:.9g}\n", load.node + 1, j + 1, load.force(j));
        }
    }
    return text + "*NODE PRINT,NSET=ALL\nU\n*EL FILE,SECTION FORCES,OUTPUT=2D\nS,NOE\n*END STEP\n";
}

// `displacements`, then a line for each node: its number and three values.
std::vector<frame::Vec3> read_motions(const std::string& dat, std::size_t nodes) {
    std::vector<frame::Vec3> moved(nodes, frame::Vec3::Zero());
    std::istringstream lines(dat);
    std::string line;
    std::size_t found = 0;
    while (std::getline(lines, line)) {
        std::istringstream values(line);
        std::size_t node = 0;
        frame::Vec3 at;
        if (!(values >> node >> at.x() >> at.y() >> at.z()) || node == 0 || node > nodes) continue;
        moved[node - 1] = at;
        ++found;
    }
    CHECK(found == nodes);
    return moved;
}

// The block STRESS holds section forces by node, in fields of twelve: two shears, normal force, torque, two
// moments.
std::vector<Eigen::Vector2d> read_moments(const std::string& frd, std::size_t nodes) {
    std::vector<Eigen::Vector2d> moments(nodes, Eigen::Vector2d::Zero());
    std::istringstream lines(frd);
    std::string line;
    bool inside = false;
    std::size_t found = 0;
    while (std::getline(lines, line)) {
        if (line.starts_with(" -4")) inside = line.find("STRESS") != std::string::npos;
        if (!inside || !line.starts_with(" -1") || line.size() < 13 + 6 * 12) continue;
        const std::size_t node = std::stoul(line.substr(3, 10));
        if (node == 0 || node > nodes) continue;
        const auto value = [&](std::size_t i) { return std::stod(line.substr(13 + 12 * i, 12)); };
        moments[node - 1] = {value(4), value(5)};
        ++found;
    }
    CHECK(found == nodes);
    return moments;
}

}  // namespace

RectangleOf rectangle_of(const frame::Section& section) {
    const double height = std::sqrt(12 * section.inertia_y / section.area);
    return {section.area / height, height};
}

frame::Model comparable(frame::Model model) {
    for (frame::Beam& beam : model.beams) beam = as_brick(std::move(beam));
    return model;
}

CalculixResult run_calculix(const frame::Model& model, const frame::LoadCase& loads) {
    const ScratchFolder folder;
    folder.put("frame.inp", input_text(model, loads));
    const std::string command =
        fmt::format("cd '{}' && OMP_NUM_THREADS=1 ccx frame > frame.log 2>&1", folder.path().string());
    REQUIRE_MESSAGE(std::system(command.c_str()) == 0,
                    "ccx (package calculix-ccx) failed: " << folder.get("frame.log"));
    return {read_motions(folder.get("frame.dat"), model.nodes.size()),
            read_moments(folder.get("frame.frd"), model.nodes.size())};
}

}  // namespace rodwright::testing
