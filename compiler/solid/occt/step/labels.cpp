#include "compiler/solid/occt/step/labels.hpp"

#include <map>

#include <APIHeaderSection_MakeHeader.hxx>
#include <Interface_HArray1OfHAsciiString.hxx>
#include <Quantity_Color.hxx>
#include <STEPConstruct.hxx>
#include <STEPConstruct_Styles.hxx>
#include <StepBasic_Product.hxx>
#include <StepBasic_ProductDefinition.hxx>
#include <StepBasic_ProductDefinitionFormation.hxx>
#include <StepBasic_ProductDefinitionRelationship.hxx>
#include <StepData_StepModel.hxx>
#include <StepRepr_ProductDefinitionShape.hxx>
#include <StepRepr_RepresentedDefinition.hxx>
#include <StepShape_ContextDependentShapeRepresentation.hxx>
#include <StepShape_ShapeDefinitionRepresentation.hxx>
#include <StepVisual_Colour.hxx>
#include <StepVisual_MechanicalDesignGeometricPresentationRepresentation.hxx>
#include <StepVisual_PresentationStyleAssignment.hxx>
#include <StepVisual_StyledItem.hxx>
#include <TransferBRep.hxx>
#include <TransferBRep_ShapeMapper.hxx>
#include <Transfer_Binder.hxx>
#include <Transfer_FinderProcess.hxx>
#include <XSControl_TransferWriter.hxx>

namespace rodwright::occt {

namespace {

using Text = Handle(TCollection_HAsciiString);
using ShapeOfProduct = Handle(StepShape_ShapeDefinitionRepresentation);

Text text_of(const std::string& text) {
    return new TCollection_HAsciiString(text.c_str());
}

// Finds what the transfer made of a shape, and names it.
class Namer {
  public:
    explicit Namer(const XSControl_WorkSession& session)
        : finder_(session.TransferWriter()->FinderProcess()) {}

    void name_product(const TopoDS_Shape& shape, const std::string& name) const {
        const auto definition = product_shape(shape)->Definition().PropertyDefinition()->Definition();
        const Handle(StepBasic_Product) product = definition.ProductDefinition()->Formation()->OfProduct();
        product->SetId(text_of(name));
        product->SetName(text_of(name));
    }

    // The transfer numbers occurrences on from those of the process's earlier files.
    void name_occurrence(const TopoDS_Shape& member, const TopoDS_Shape& assembly, const std::string& name) {
        Handle(StepShape_ContextDependentShapeRepresentation) place;
        STEPConstruct::FindCDSR(finder_->Find(TransferBRep::ShapeMapper(finder_, member)),
                                product_shape(assembly), place);
        const Handle(StepBasic_ProductDefinitionRelationship) occurrence =
            place->RepresentedProductRelation()->Definition().ProductDefinitionRelationship();
        occurrence->SetId(text_of(std::to_string(++count_)));
        occurrence->SetName(text_of(name));
    }

  private:
    ShapeOfProduct product_shape(const TopoDS_Shape& shape) const {
        ShapeOfProduct found;
        finder_->FindTypedTransient(TransferBRep::ShapeMapper(finder_, shape),
                                    STANDARD_TYPE(StepShape_ShapeDefinitionRepresentation), found);
        return found;
    }

    Handle(Transfer_FinderProcess) finder_;
    int count_ = 0;
};

Handle(StepData_StepModel) model_of(const XSControl_WorkSession& session) {
    return Handle(StepData_StepModel)::DownCast(session.Model());
}

}  // namespace

void name_products(const XSControl_WorkSession& session, const StepModel& model, const StepTree& tree) {
    Namer namer(session);
    for (std::size_t i = 0; i < model.shapes.size(); ++i)
        namer.name_product(tree.shapes[i], model.shapes[i].name);
    for (std::size_t i = 0; i < model.parts.size(); ++i) {
        const ModelPart& part = model.parts[i];
        namer.name_occurrence(tree.parts[i], tree.assemblies[part.assembly], part.name);
    }
    for (std::size_t i = 0; i < model.assemblies.size(); ++i) {
        const StepAssembly& assembly = model.assemblies[i];
        if (tree.assemblies[i].IsNull()) continue;
        namer.name_product(tree.assemblies[i], assembly.name);
        if (i > 0) namer.name_occurrence(tree.assemblies[i], tree.assemblies[assembly.parent], assembly.name);
    }
}

void colour_shapes(const Handle(XSControl_WorkSession) & session, const StepModel& model,
                   const StepTree& tree) {
    std::map<std::string, Handle(StepVisual_Colour)> colours;
    for (std::size_t i = 0; i < model.shapes.size(); ++i) {
        const std::string& hex = model.shapes[i].colour;
        Quantity_Color value;
        if (!Quantity_Color::ColorFromHex(hex.c_str(), value)) continue;
        Handle(StepVisual_Colour)& colour = colours[hex];
        STEPConstruct_Styles styles(session);
        if (colour.IsNull()) colour = STEPConstruct_Styles::EncodeColor(value);
        const Handle(StepRepr_RepresentationItem) item =
            STEPConstruct::FindEntity(session->TransferWriter()->FinderProcess(), tree.shapes[i]);
        styles.AddStyle(item, styles.MakeColorPSA(item, colour, nullptr, nullptr, 0), nullptr);
        Handle(StepVisual_MechanicalDesignGeometricPresentationRepresentation) styled;
        styles.CreateMDGPR(styles.FindContext(tree.shapes[i]), styled);
        session->Model()->AddWithRefs(styled);
    }
}

void fill_header(const XSControl_WorkSession& session, const StepModel& model) {
    APIHeaderSection_MakeHeader header(model_of(session));
    const std::string& name = model.assemblies.front().name;
    header.SetDescriptionValue(1, text_of("the parts of a piece of furniture in their places"));
    header.SetName(text_of(name));
    header.SetTimeStamp(text_of(model.time));
    header.SetAuthorValue(1, text_of(""));
    header.SetOrganizationValue(1, text_of(""));
    header.SetPreprocessorVersion(text_of("Open CASCADE Technology"));
    header.SetOriginatingSystem(text_of(model.system));
    header.SetAuthorisation(text_of(""));
    header.Apply(model_of(session));
}

}  // namespace rodwright::occt
