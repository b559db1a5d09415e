#include "backends/model/model_backend.hpp"
#include "backends/words.hpp"

namespace rodwright {
namespace {

// "leg[left front]": "leg (left front)".
std::string part_words(const std::string& name) {
    std::string words;
    for (const char letter : plain_words(name)) {
        if (letter == '[')
            words += " (";
        else
            words += letter == ']' ? ')' : letter;
    }
    return words;
}

std::string colour_of(const Piece& piece, const Kind& kind) {
    const Wood* wood = piece.find_wood(kind.wood);
    return wood == nullptr ? "" : wood->colour;
}

// In the model the piece itself is the first assembly.
std::size_t place_of(AssemblyId assembly) {
    return assembly == AssemblyId::none ? 0 : static_cast<std::size_t>(assembly) + 1;
}

}  // namespace

StepModel step_model(const Piece& piece, SolidStore& solids) {
    StepModel model;
    model.system = "rodwright " RODWRIGHT_VERSION;
    model.assemblies.push_back({piece.name, 0});
    for (const Assembly& assembly : piece.assemblies)
        model.assemblies.push_back({part_words(assembly.name), place_of(assembly.parent)});
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        const Kind& kind = piece.kinds[i];
        const SolidRef solid = solids.solid(static_cast<KindId>(i));
        if (!solid) continue;
        for (const PartId id : kind.parts) {
            const Part& part = piece[id];
            model.parts.push_back({kind.letter + ' ' + part_words(part.name), model.shapes.size(),
                                   place_of(part.assembly), pose_of(part.placement)});
        }
        model.shapes.push_back({kind.letter + ' ' + plain_words(kind.name), solid, colour_of(piece, kind)});
    }
    return model;
}

}  // namespace rodwright
