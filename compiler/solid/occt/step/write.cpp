// A model to the bytes of its STEP file, and what the module exports.
#include <sstream>

#include <Interface_Static.hxx>
#include <STEPControl_Writer.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <XSControl_WorkSession.hxx>

#include "compiler/solid/kernel_module.hpp"
#include "compiler/solid/occt/guard.hpp"
#include "compiler/solid/occt/step/labels.hpp"
#include "compiler/solid/occt/step/text.hpp"
#include "compiler/solid/occt/step/tree.hpp"

namespace rodwright::occt {

namespace {

// Open CASCADE keeps these for the process and reads them from the environment's resource files: all that
// matter are set for each file.
void choose_settings() {
    Interface_Static::SetCVal("write.step.schema", "AP214IS");
    Interface_Static::SetCVal("write.step.unit", "MM");
    Interface_Static::SetCVal("xstep.cascade.unit", "MM");
    Interface_Static::SetIVal("write.step.assembly", 1);
    Interface_Static::SetIVal("write.step.vertex.mode", 0);
    Interface_Static::SetIVal("write.step.nonmanifold", 0);
    Interface_Static::SetIVal("write.precision.mode", 0);
    // Faces are planes and round surfaces, on which any reader finds the curves of their edges itself.
    Interface_Static::SetIVal("write.surfacecurve.mode", 0);
}

std::string printed(const XSControl_WorkSession& session) {
    StepData_StepWriter writer(Handle(StepData_StepModel)::DownCast(session.Model()));
    writer.SendModel(Handle(StepData_Protocol)::DownCast(session.Protocol()));
    std::ostringstream text;
    writer.Print(text);
    return text.str();
}

bool write(const StepModel& model, std::string& bytes) {
    STEPControl_Writer writer;
    choose_settings();
    const StepTree tree = step_tree(model);
    if (writer.Transfer(tree.assemblies.at(0), STEPControl_AsIs) != IFSelect_RetDone) return false;
    const Handle(XSControl_WorkSession) session = writer.WS();
    colour_shapes(session, model, tree);
    name_products(*session, model, tree);
    fill_header(*session, model);
    bytes = clean_step_text(printed(*session));
    return true;
}

}  // namespace

}  // namespace rodwright::occt

extern "C" std::uint32_t rodwright_step_version() {
    return rodwright::solid_kernel_version;
}

extern "C" bool rodwright_step_bytes(const rodwright::StepModel& model, std::string& bytes) {
    bool written = false;
    return rodwright::occt::guarded([&] { written = rodwright::occt::write(model, bytes); }) && written;
}
