// Every bound on what an input can make rodwright do, in one place. Passing one is an error that names it.
#pragma once

#include <cstddef>
#include <cstdint>

namespace rodwright::limits {

inline constexpr std::size_t file_bytes = 2U << 20U;  // one file, and all files of a design together
inline constexpr std::size_t files = 256;             // files that one design reads
inline constexpr std::size_t nesting = 120;           // brackets and blocks within one another
inline constexpr std::size_t tree_depth = 1'000;  // terms of one sum, and all else that hangs on one another
inline constexpr std::size_t number_digits = 40;  // digits in one written number
inline constexpr std::size_t value_bits = 4096;   // size of numerator or denominator of a value
inline constexpr std::size_t instances = 20'000;  // part instances in a piece
inline constexpr std::size_t assemblies = 5'000;  // placed assemblies in a piece
inline constexpr std::size_t evaluating = 10'000'000;  // steps, as Evaluator counts them
inline constexpr std::size_t sum_terms = 2'000;        // unknown faces in one sum
inline constexpr std::size_t solving = 3'000'000;      // machine words of numbers made while placing parts
inline constexpr std::size_t trials = 5'000'000;       // pairs of parts that joins look at
inline constexpr std::size_t joints = 100'000;         // joints in a piece
inline constexpr std::size_t row_count = 2'000;        // parts in one row
inline constexpr std::size_t tried_parts = 400;        // parts that are tried whether they go together
inline constexpr std::size_t frame_points = 10'000;    // points of the frame that strength is worked out with
inline constexpr std::size_t checked_parts = 2'000;    // parts whose solids are checked
inline constexpr std::size_t held_steps = 20'000'000;  // steps from what holds a part to what holds that
inline constexpr std::size_t features = 300'000;       // features of all parts, and corners of their profiles
inline constexpr std::size_t repeats = 1'000;          // copies that one `repeat` may ask for
inline constexpr std::size_t call_depth = 64;          // definitions that use definitions
inline constexpr std::size_t diagnostics = 100;        // diagnostics kept for one run
inline constexpr std::size_t yaml_bytes = 2U << 20U;   // one data file in YAML
inline constexpr std::size_t yaml_nodes = 100'000;     // nodes of one data file
inline constexpr std::size_t yaml_depth = 32;          // nesting of one data file
inline constexpr std::size_t yaml_line = 2'000;        // bytes in one line of a data file
inline constexpr std::size_t rack_entries = 2'000;     // boards, sheets and offers written in one rack
inline constexpr std::size_t rack_pieces = 10'000;     // boards and sheets of a rack, each one counted
inline constexpr std::size_t board_defects = 100;      // defects marked on one board or sheet

}  // namespace rodwright::limits
