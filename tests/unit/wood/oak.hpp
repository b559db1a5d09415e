// The wood of small pieces.
#pragma once

#include <string>

inline const std::string oak = "wood oak = white_oak\n";
