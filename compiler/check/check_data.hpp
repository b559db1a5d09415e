// What checks hold a piece against: stdlib/data/checks.yaml, where the source of each stands beside it.
// Millimetres, newtons, kilograms, degrees.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/quantity/quantity.hpp"

namespace rodwright {

// Faces no further apart than `widest`, where one covers at least `cover` of the other.
struct GapLimit {
    double widest = 0;
    double cover = 0;
};

struct FitLimits {
    GapLimit gap;
    double thinnest_wall = 0;
    double wall_share = 0;    // of the part's thickness, where that is less
    double trench_share = 0;  // of the part's width
};

struct WoodLimits {
    double short_way = 0;  // across the grain over along it
    double run_out = 0;    // of the narrowest place
};

// A weight near an edge, and a push outwards.
struct TipTest {
    std::string use;
    double down = 0;
    double inset = 0;
    double push = 0;
    bool backwards = false;  // or against a wall
    std::string source;
};

// How storage units are tried that children climb.
struct StorageTest {
    double least_height = 0;
    double least_mass = 0;
    Quantity child;    // a force, as written
    double block = 0;  // under the rear feet
    Quantity push;     // the same
    double push_height = 0;
    double contents = 0;  // kg/m^3
    std::string source;
};

struct StandingLimits {
    double least_angle = 0;
    std::vector<TipTest> tests;
    StorageTest storage;
};

enum class Measure { top, knees, depth, spacing, reach };

struct UsualSize {
    std::string use;  // "seat", "shelf_books"
    Measure measure{};
    std::string what;  // "height of the seat"
    double least = 0;
    double most = 0;  // infinite where there is none
    std::string source;
};

struct CheckData {
    FitLimits fit;
    GapLimit movement;
    WoodLimits wood;
    StandingLimits standing;
    std::vector<UsualSize> people;
};

// Empty, with Code::bad_data and the like in `diagnostics`, if the text is not as it should be.
std::optional<CheckData> read_check_data(const SourceManager& sources, FileId file, Diagnostics& diagnostics);

// Those that are built in.
const CheckData& check_data();

}  // namespace rodwright
