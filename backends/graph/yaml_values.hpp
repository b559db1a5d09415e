// The small values of a piece in YAML. Internal to backends/graph.
#pragma once

#include <yaml-cpp/emitter.h>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "compiler/graph/piece.hpp"

namespace rodwright {

// A key and what follows it. Words are quoted wherever YAML could read something else into them.
void put(YAML::Emitter& out, const char* key, const std::string& word);
void put(YAML::Emitter& out, const char* key, const Rational& number);
void put(YAML::Emitter& out, const char* key, bool flag);
void put(YAML::Emitter& out, const char* key, std::size_t number);
void put(YAML::Emitter& out, const char* key, const Vector& vector);
void put(YAML::Emitter& out, const char* key, const Box& box);
void put(YAML::Emitter& out, const char* key, const Quantity& quantity);
void put(YAML::Emitter& out, const char* key, const std::vector<std::string>& words);
void put_frame(YAML::Emitter& out, const Frame& frame);  // its fields, in a map that is open
void put_numbers(YAML::Emitter& out, const char* key,
                 const std::vector<std::pair<std::string, Quantity>>& numbers);
void put_words(YAML::Emitter& out, const char* key,
               const std::vector<std::pair<std::string, std::string>>& words);

// The elements of a list, without a key.
void put_rational(YAML::Emitter& out, const Rational& number);
std::string direction_word(Direction direction);  // "+wide"

template <typename Id>
std::size_t place_in_list(Id id) {
    return static_cast<std::size_t>(id);
}

template <typename Id>
void put_ids(YAML::Emitter& out, const char* key, const std::vector<Id>& ids) {
    out << YAML::Key << key << YAML::Value << YAML::Flow << YAML::BeginSeq;
    for (const Id id : ids) out << place_in_list(id);
    out << YAML::EndSeq;
}

}  // namespace rodwright
