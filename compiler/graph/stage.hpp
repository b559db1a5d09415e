// The stages of work on every piece. `after` in a joint's or shape's step may name one.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rodwright {

// In the order in which they follow each other.
enum class Stage : std::uint8_t { mill, lay_out, joinery, shaping, sanding, assembly, finishing, fastening };
inline constexpr std::size_t stage_count = 8;

std::string_view stage_word(Stage stage);  // "lay_out", as joints and rules write it
std::optional<Stage> find_stage(std::string_view word);
std::vector<std::string> stage_words();

}  // namespace rodwright
