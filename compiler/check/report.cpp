#include "compiler/check/report.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "compiler/check/words.hpp"
#include "compiler/diagnostics/render.hpp"

namespace rodwright {

namespace {

using Json = nlohmann::ordered_json;

// "mm", "N·mm", "kg/mm³": the base units of quantity.hpp.
std::string base_unit(const Dimension& dimension) {
    constexpr std::array<std::string_view, 7> words = {"mm", "°", "kg", "N", "s", "K", "money"};
    constexpr std::array<std::string_view, 5> exponents = {"", "", "²", "³", "⁴"};
    std::string above;
    std::string below;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const int power = dimension.power[i];
        std::string& side = power < 0 ? below : above;
        if (power == 0) continue;
        side += fmt::format("{}{}{}", side.empty() ? "" : "·", words[i],
                            exponents[static_cast<std::size_t>(std::abs(power))]);
    }
    if (below.empty()) return above;
    return (above.empty() ? "1" : above) + "/" + below;
}

// Six digits: the rest is how the machine adds up.
double rounded(double value) {
    return std::stod(fmt::format("{:.6g}", value));
}

Json value_json(const Quantity& value, const LengthStyle& style) {
    return {{"shown", format_quantity(value, style)},
            {"number", rounded(value.to_double())},
            {"unit", base_unit(value.dimension)}};
}

Json number_json(const Number& number, const LengthStyle& style) {
    Json inputs = Json::array();
    for (const auto& [name, value] : number.inputs) {
        Json input = {{"name", name}};
        input.update(value_json(value, style));
        inputs.push_back(std::move(input));
    }
    return {{"check", number.check},
            {"title", number.title},
            {"value", value_json(number.value, style)},
            {"limit", number.limit ? value_json(*number.limit, style) : Json()},
            {"formula", number.formula},
            {"inputs", std::move(inputs)},
            {"source", number.source},
            {"assumptions", number.assumptions}};
}

}  // namespace

std::string findings_json(const Findings& findings, const SourceManager& sources, const LengthStyle& style) {
    Json list = Json::array();
    for (const Diagnostic& each : findings.diagnostics.sorted())
        list.push_back(Json::parse(render_json(each, sources)));
    Json numbers = Json::array();
    for (const Number& number : findings.numbers) numbers.push_back(number_json(number, style));
    const Json all = {{"findings", std::move(list)}, {"numbers", std::move(numbers)}};
    return all.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

std::string numbers_text(const std::vector<Number>& numbers, const LengthStyle& piece_style) {
    const LengthStyle style = computed_style(piece_style);
    std::string text;
    for (const Number& number : numbers) {
        text += fmt::format("{}: {}", number.title, format_quantity(number.value, style));
        if (number.limit) text += fmt::format(" (limit {})", format_quantity(*number.limit, style));
        text += fmt::format("\n  by {}", number.formula);
        for (const auto& [name, value] : number.inputs)
            text += fmt::format("{} {} {}", &value == &number.inputs.front().second ? ":" : ",", name,
                                format_quantity(value, style));
        text += fmt::format("\n  source: {}\n", number.source);
        for (const std::string& each : number.assumptions) text += fmt::format("  assumed: {}\n", each);
    }
    return text;
}

}  // namespace rodwright
