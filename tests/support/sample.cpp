#include "tests/support/sample.hpp"

#include "compiler/compile.hpp"
#include "compiler/diagnostics/render.hpp"

namespace rodwright::testing {

namespace {

std::string rendered(const Diagnostics& diagnostics, const SourceManager& sources) {
    std::string text;
    for (const Diagnostic& diagnostic : diagnostics.sorted()) text += render(diagnostic, sources, false);
    return text;
}

double find_number(const Work& work, const std::string& name) {
    for (const auto& [known, quantity] : work.numbers) {
        if (known == name) return quantity.to_double();
    }
    FAIL("`" << work.definition << "` has no number `" << name << "`");
    return 0;
}

}  // namespace

struct Sample::State {
    Compilation compiled;
    Diagnostics of_solids;
    std::optional<SolidStore> solids;
};

Sample::Sample(const std::string& body, const std::string& unit) : state_(std::make_unique<State>()) {
    const std::string text = "piece \"Sample\" {\nunit " + unit +
                             "\nwide = 1000mm; deep = 1000mm; tall = 1000mm\nwood oak = white_oak\n" + body +
                             "}\n";
    CompileOptions options;
    options.path = "sample.rod";
    state_->compiled = compile(MemoryWorld({{"sample.rod", text}}), options);
    const std::string report = rendered(state_->compiled.diagnostics, *state_->compiled.sources);
    REQUIRE_MESSAGE(state_->compiled.piece.has_value(), report);
    state_->solids.emplace(*state_->compiled.piece, state_->of_solids);
}

Sample::~Sample() = default;

const Part& Sample::part(const std::string& name) const {
    for (const Part& each : state_->compiled.piece->parts) {
        if (each.name == name) return each;
    }
    FAIL("no part `" << name << "`");
    return state_->compiled.piece->parts.front();
}

const Kind& Sample::kind(const std::string& part_name) const {
    return (*state_->compiled.piece)[part(part_name).kind];
}

std::size_t Sample::count(const std::string& declared) const {
    std::size_t found = 0;
    for (const Part& each : state_->compiled.piece->parts) found += each.declared == declared ? 1 : 0;
    return found;
}

SolidRef Sample::solid_of(const std::string& part_name) const {
    SolidRef solid = state_->solids->solid(part(part_name).kind);
    const std::string report = rendered(state_->of_solids, *state_->compiled.sources);
    REQUIRE_MESSAGE(report.empty(), report);
    REQUIRE(solid != nullptr);
    return solid;
}

double Sample::volume(const std::string& part_name) const {
    const SolidRef solid = solid_of(part_name);
    return state_->solids->kernel()->volume(*solid);
}

Point3 Sample::centre(const std::string& part_name) const {
    const SolidRef solid = solid_of(part_name);
    const Point3 own = state_->solids->kernel()->centre_of_mass(*solid);
    const Pose pose = pose_of(part(part_name).placement);
    Point3 result = pose.move;
    for (std::size_t column = 0; column < 3; ++column) {
        for (std::size_t row = 0; row < 3; ++row) result[row] += pose.columns[column][row] * own[column];
    }
    return result;
}

Rational Sample::near(const std::string& declared, int row, int axis) const {
    return part(declared + "[" + std::to_string(row + 1) + "]").body.low.at[static_cast<std::size_t>(axis)];
}

double Sample::size(const std::string& part_name, int axis) const {
    return kind(part_name).size.at[static_cast<std::size_t>(axis)].get_d();
}

double Sample::overall(const std::string& part_name, int axis) const {
    return kind(part_name).overall(static_cast<Axis>(axis)).get_d();
}

double Sample::number(const std::string& name) const {
    REQUIRE(state_->compiled.piece->joint_kinds.size() == 1);
    return find_number(state_->compiled.piece->joint_kinds.front().work, name);
}

double Sample::shape_number(const std::string& part_name, const std::string& name) const {
    REQUIRE(!kind(part_name).shapes.empty());
    return find_number(kind(part_name).shapes.front().work, name);
}

}  // namespace rodwright::testing
