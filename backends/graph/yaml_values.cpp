#include "backends/graph/yaml_values.hpp"

namespace rodwright {
namespace {

void put_word(YAML::Emitter& out, const std::string& word) {
    out << YAML::DoubleQuoted << word;
}

void put_vector(YAML::Emitter& out, const Vector& vector) {
    out << YAML::Flow << YAML::BeginSeq;
    for (const Axis axis : all_axes) put_rational(out, vector[axis]);
    out << YAML::EndSeq;
}

// "mm2 kg": the base units and their powers, with RatioKind's word for plain ratios.
std::string base_unit(const Dimension& dimension) {
    if (dimension.ratio == RatioKind::slope) return "slope";
    if (dimension.ratio == RatioKind::percentage) return "percentage";
    static constexpr const char* names[] = {"mm", "deg", "kg", "N", "s", "K", "money"};
    std::string unit;
    for (std::size_t i = 0; i < dimension.power.size(); ++i) {
        const int power = dimension.power[i];
        if (power == 0) continue;
        if (!unit.empty()) unit += ' ';
        unit += names[i];
        if (power != 1) unit += std::to_string(power);
    }
    return unit.empty() ? "number" : unit;
}

}  // namespace

void put_rational(YAML::Emitter& out, const Rational& number) {
    out << to_text(number);
}

std::string direction_word(Direction direction) {
    return (direction.positive ? "+" : "-") + std::string(axis_name(direction.axis));
}

void put(YAML::Emitter& out, const char* key, const std::string& word) {
    out << YAML::Key << key << YAML::Value;
    put_word(out, word);
}

void put(YAML::Emitter& out, const char* key, const Rational& number) {
    out << YAML::Key << key << YAML::Value;
    put_rational(out, number);
}

void put(YAML::Emitter& out, const char* key, bool flag) {
    out << YAML::Key << key << YAML::Value << flag;
}

void put(YAML::Emitter& out, const char* key, std::size_t number) {
    out << YAML::Key << key << YAML::Value << number;
}

void put(YAML::Emitter& out, const char* key, const Vector& vector) {
    out << YAML::Key << key << YAML::Value;
    put_vector(out, vector);
}

void put(YAML::Emitter& out, const char* key, const Box& box) {
    out << YAML::Key << key << YAML::Value << YAML::Flow << YAML::BeginMap;
    put(out, "low", box.low);
    put(out, "high", box.high);
    out << YAML::EndMap;
}

void put(YAML::Emitter& out, const char* key, const Quantity& quantity) {
    out << YAML::Key << key << YAML::Value << YAML::Flow << YAML::BeginMap;
    put(out, "value", quantity.value);
    put(out, "unit", base_unit(quantity.dimension));
    out << YAML::EndMap;
}

void put(YAML::Emitter& out, const char* key, const std::vector<std::string>& words) {
    out << YAML::Key << key << YAML::Value << YAML::Flow << YAML::BeginSeq;
    for (const std::string& word : words) put_word(out, word);
    out << YAML::EndSeq;
}

void put_frame(YAML::Emitter& out, const Frame& frame) {
    put(out, "origin", frame.origin);
    put(out, "u", direction_word(frame.u));
    put(out, "v", direction_word(frame.v));
    put(out, "w", direction_word(frame.w));
}

void put_numbers(YAML::Emitter& out, const char* key,
                 const std::vector<std::pair<std::string, Quantity>>& numbers) {
    if (numbers.empty()) return;
    out << YAML::Key << key << YAML::Value << YAML::BeginMap;
    for (const auto& [name, quantity] : numbers) put(out, name.c_str(), quantity);
    out << YAML::EndMap;
}

void put_words(YAML::Emitter& out, const char* key,
               const std::vector<std::pair<std::string, std::string>>& words) {
    if (words.empty()) return;
    out << YAML::Key << key << YAML::Value << YAML::BeginMap;
    for (const auto& [name, word] : words) put(out, name.c_str(), word);
    out << YAML::EndMap;
}

}  // namespace rodwright
