// Values that entries of a rack's file share, as a maker writes them: woods, lengths, thicknesses by
// quarters, shares, prices.
//
// All report at its place what cannot be used (Code::bad_data, Code::unknown_wood, Code::too_large), and give
// back an empty value or zero then; FieldReader::ok() is false afterwards. Lengths are millimetres.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "compiler/data/woods.hpp"
#include "compiler/data/yaml_fields.hpp"

namespace rodwright {

inline constexpr std::size_t longest_rack_name = 40;  // bytes

// What a length may be. What is outside was rather written in another unit than meant.
struct SizeBounds {
    long least;
    long most;
    std::string_view words;  // "1mm to 30m"
};

inline constexpr SizeBounds length_bounds{1, 30'000, "from 1mm to 30m"};
inline constexpr SizeBounds width_bounds{1, 3'000, "from 1mm to 3m"};
inline constexpr SizeBounds thickness_bounds{1, 500, "from 1mm to 500mm"};
inline constexpr SizeBounds place_bounds{0, 30'000, "from 0 to 30m"};

// Two lengths of one field: at the first end and at the other, or the least and the most.
struct SizePair {
    Rational first;
    Rational second;
};

// `text` as a length: what `node` says, or a part of that. A plain 0 has no unit.
std::optional<Rational> read_size(FieldReader& fields, const YamlNode& node, std::string_view text,
                                  const SizeBounds& bounds);
// Quarters of an inch, `5/4`, or a length.
std::optional<Rational> read_thickness(FieldReader& fields, const YamlNode& node);
// Whether `text` is a thickness by quarters.
bool is_by_quarters(std::string_view text);

Rational size_of(FieldReader& fields, std::string_view key, const SizeBounds& bounds);  // required
Rational size_or_none(FieldReader& fields, std::string_view key, const SizeBounds& bounds);
Rational thickness_of(FieldReader& fields);
// `6 in`, which is both, or `6 in to 5 in`. Required.
SizePair sizes_of(FieldReader& fields, std::string_view key, const SizeBounds& bounds);
// `2 in`, which is at both ends, `2 in, 1 in` or the same as a list; nothing if it is not there.
SizePair at_both_ends(FieldReader& fields, std::string_view key, const SizeBounds& bounds);

// A wood's key, of sheet goods or not; `elsewhere` is the list where the other kind belongs.
std::string wood_of(FieldReader& fields, const WoodTable& woods, bool sheet, std::string_view elsewhere);
// "flat", "rift", "quartered" or empty.
std::string cut_of(FieldReader& fields);
// A name as it is chalked on a board. Required.
std::string name_of(FieldReader& fields);
// One, if it is not there.
int count_of(FieldReader& fields);
// `8%` as 8, between 0 and 100.
std::optional<Rational> percent_of(FieldReader& fields, std::string_view key);
std::optional<Rational> price_of(FieldReader& fields);
// A few words, on one line with single blanks; empty if it is not there.
std::string words_of(FieldReader& fields, std::string_view key);

}  // namespace rodwright
