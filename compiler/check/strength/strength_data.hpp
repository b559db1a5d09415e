// Loads by what a piece is used as, and the rules that results are held against: stdlib/data/loads.yaml,
// where the source of each stands beside it. Newtons, millimetres, megapascals.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/geometry/geometry.hpp"

namespace rodwright::strength {

// Where on the faces that carry it: in the middle, at the front edge, at the left end, or all over.
enum class LoadPlace { middle, edge, end, spread };

struct UseCase {
    std::string name;               // "a weight in the middle"
    double down = 0;                // N at one place, for each person; spread: over the whole
    double every_metre = 0;         // N on each metre of length
    double every_square_metre = 0;  // N
    double push = 0;                // N sideways, at the height of the faces
    Axis along = Axis::wide;        // of a push
    LoadPlace at = LoadPlace::middle;
    bool lasting = false;  // for years, as books do
    std::string source;
};

struct UseLoads {
    std::string word;    // "shelf", "shelf_books"
    bool every = false;  // on every face that fits, as on shelves; otherwise on the highest
    std::vector<UseCase> cases;
};

struct Rules {
    double safety = 0;               // mean strength over what may be used
    double lasting = 0;              // strength under a load of years over that of the test
    double creep = 0;                // sag after years over the first
    double sag_span = 0;             // span over sag, at the least
    double sag_finer = 0;            // the same, of the finer rule
    double post_length = 0;          // of a post between hinges, over its own length
    double column_curve = 0;         // c of Ylinen's curve
    double sway_height = 0;          // height over sway, at the least
    double end_grain = 0;            // strength of glue on end grain over that along the grain
    double end_grain_stiffness = 0;  // the same of its stiffness
    double friction = 0;             // stiffness of a bearing face sideways over that across it
    double dowel_bond = 0;           // MPa around a dowel
    double dowel_shear = 0;          // MPa across a dowel
    double dowel_modulus = 0;        // MPa along a dowel
    double screw_slip = 0;           // mm, at the ultimate withdrawal load
    double end_grain_screw = 0;      // withdrawal from end grain over that from side grain
    double side_slip = 0;            // mm, at the proportional limit of a side load
    double side_reserve = 0;         // ultimate side load over the proportional limit
};

struct StrengthData {
    std::vector<UseLoads> uses;
    Rules rules;

    const UseLoads* find(const std::string& word) const;
};

// Empty, with Code::bad_data and the like in `diagnostics`, if the text is not as it should be.
std::optional<StrengthData> read_strength_data(const SourceManager& sources, FileId file,
                                               Diagnostics& diagnostics);

// Those that are built in.
const StrengthData& strength_data();

}  // namespace rodwright::strength
