#include "tests/step_reader/read_step.hpp"

#include <sstream>

#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Quantity_Color.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TColStd_SequenceOfAsciiString.hxx>
#include <TDF_Label.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::string name_of(const TDF_Label& label) {
    Handle(TDataStd_Name) name;
    if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return "";
    std::string utf8(static_cast<std::size_t>(name->Get().LengthOfCString()) + 1, '\0');
    Standard_PCharacter bytes = utf8.data();
    name->Get().ToUTF8CString(bytes);
    return utf8.c_str();
}

double volume_of(const TopoDS_Shape& shape) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(shape, properties);
    return properties.Mass();
}

Bounds bounds_of(const TopoDS_Shape& shape) {
    Bnd_Box box;
    BRepBndLib::AddOptimal(shape, box, Standard_False, Standard_False);
    box.SetGap(0);
    Bounds bounds;
    box.Get(bounds.low[0], bounds.low[1], bounds.low[2], bounds.high[0], bounds.high[1], bounds.high[2]);
    return bounds;
}

class Walk {
  public:
    Walk(const TDF_Label& document, ReadModel& model)
        : colours_(XCAFDoc_DocumentTool::ColorTool(document)), model_(model) {}

    void components(const TDF_Label& assembly, const TopLoc_Location& place,
                    const std::vector<std::string>& within) {
        TDF_LabelSequence members;
        XCAFDoc_ShapeTool::GetComponents(assembly, members);
        for (const TDF_Label& member : members) {
            TDF_Label shape;
            XCAFDoc_ShapeTool::GetReferredShape(member, shape);
            const TopLoc_Location here = place * XCAFDoc_ShapeTool::GetLocation(member);
            if (XCAFDoc_ShapeTool::IsAssembly(shape)) {
                std::vector<std::string> inner = within;
                inner.push_back(name_of(member));
                components(shape, here, inner);
            } else {
                model_.parts.push_back(part(member, shape, here, within));
            }
        }
    }

  private:
    ReadPart part(const TDF_Label& member, const TDF_Label& label, const TopLoc_Location& place,
                  const std::vector<std::string>& within) const {
        const TopoDS_Shape shape = XCAFDoc_ShapeTool::GetShape(label).Moved(place);
        ReadPart read{within,           name_of(member),
                      name_of(label),   BRepCheck_Analyzer(shape).IsValid() != 0,
                      volume_of(shape), bounds_of(shape)};
        Quantity_Color colour;
        if (colours_->GetColor(label, XCAFDoc_ColorSurf, colour))
            colour.Values(read.colour[0], read.colour[1], read.colour[2], Quantity_TOC_sRGB);
        return read;
    }

    Handle(XCAFDoc_ColorTool) colours_;
    ReadModel& model_;
};

double unit_of(STEPCAFControl_Reader& reader) {
    TColStd_SequenceOfAsciiString lengths;
    TColStd_SequenceOfAsciiString angles;
    TColStd_SequenceOfAsciiString solid_angles;
    reader.ChangeReader().FileUnits(lengths, angles, solid_angles);
    return lengths.Size() == 1 && lengths.First() == "millimetre" ? 1 : 0;
}

}  // namespace

extern "C" bool read_step(const std::string& bytes, ReadModel& model) {
    Message::DefaultMessenger()->ChangePrinters().Clear();
    STEPCAFControl_Reader reader;
    std::istringstream stream(bytes);
    if (reader.ChangeReader().ReadStream("bytes", stream) != IFSelect_RetDone) return false;
    model.millimetres = unit_of(reader);
    Handle(TDocStd_Document) document = new TDocStd_Document("read");
    if (!reader.Transfer(document)) return false;
    TDF_LabelSequence roots;
    XCAFDoc_DocumentTool::ShapeTool(document->Main())->GetFreeShapes(roots);
    if (roots.Size() != 1) return false;
    model.name = name_of(roots.First());
    Walk(document->Main(), model).components(roots.First(), {}, {});
    return true;
}
