#include "compiler/stock/rack/rack_fields.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "compiler/limits.hpp"

namespace rodwright {

static constexpr std::size_t longest_words = 300;  // bytes: they are written on a drawing
static constexpr long highest_price = 1'000'000'000;

std::string wood_of(FieldReader& fields, const WoodTable& woods, bool sheet, std::string_view elsewhere) {
    const YamlNode* node = fields.scalar("wood");
    if (node == nullptr) return {};
    const WoodSpecies* species = woods.find(node->text);
    if (species == nullptr) {
        fields.fault(no_such_wood(node->text, node->span, woods));
    } else if (species->sheet != sheet) {
        fields.fault(*node, fmt::format("`{}` is {} in sheets", node->text, sheet ? "not made" : "made"),
                     fmt::format("write this entry under `{}`", elsewhere));
    }
    return node->text;
}

std::string cut_of(FieldReader& fields) {
    static constexpr std::array<std::string_view, 3> cuts = {"flat", "rift", "quartered"};
    const YamlNode* node = fields.optional_scalar("cut");
    if (node == nullptr) return {};
    if (std::ranges::find(cuts, std::string_view(node->text)) == cuts.end()) {
        fields.fault(*node, fmt::format("`{}` is no way to saw a board", shortened(node->text)),
                     "write `flat`, `rift` or `quartered`, or leave `cut` out");
    }
    return node->text;
}

// Letters of any script; what YAML or a list of names would take for something else is left out.
static bool is_name(std::string_view text) {
    const auto letter_or_digit = [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
               static_cast<unsigned char>(c) >= 0x80U;
    };
    return !text.empty() && text.size() <= longest_rack_name && letter_or_digit(text[0]) &&
           std::ranges::all_of(text, [&](char c) {
               return letter_or_digit(c) || c == '-' || c == '_' || c == '.' || c == '/';
           });
}

std::string name_of(FieldReader& fields) {
    const YamlNode* node = fields.scalar("name");
    if (node == nullptr) return {};
    if (!is_name(node->text)) {
        fields.fault(*node, fmt::format("`{}` cannot be the name of a board", shortened(node->text)),
                     fmt::format("write what is chalked on it, such as `A1`: letters, digits, `-`, `_`, `.` "
                                 "and `/`, at most {} bytes",
                                 longest_rack_name));
    }
    return node->text;
}

int count_of(FieldReader& fields) {
    const YamlNode* node = fields.optional_scalar("count");
    if (node == nullptr) return 1;
    const std::optional<Quantity> count = parse_quantity(node->text);
    const bool whole = count && count->is_number() && count->value.get_den() == 1 && count->value >= 1;
    if (!whole) {
        fields.fault(*node, fmt::format("`{}` is not how many there are", shortened(node->text)),
                     "write a whole number from 1, or leave `count` out where there is one");
        return 1;
    }
    if (count->value > limits::rack_pieces) {
        fields.fault(diagnose(Code::too_large, node->span,
                              fmt::format("a rack holds at most {} boards and sheets", limits::rack_pieces)));
        return 1;
    }
    return static_cast<int>(count->value.get_num().get_si());
}

std::optional<Rational> percent_of(FieldReader& fields, std::string_view key) {
    const YamlNode* node = fields.optional_scalar(key);
    if (node == nullptr) return std::nullopt;
    const std::optional<Quantity> share = parse_quantity(node->text);
    if (share && share->dimension.ratio == RatioKind::percentage && share->value <= 1) {
        return Rational(share->value * 100);
    }
    fields.fault(*node, fmt::format("`{}` is not a share from 0% to 100%", shortened(node->text)),
                 "write it as `8%`");
    return std::nullopt;
}

std::optional<Rational> price_of(FieldReader& fields) {
    const YamlNode* node = fields.optional_scalar("price");
    if (node == nullptr) return std::nullopt;
    const std::optional<Quantity> price = parse_quantity(node->text);
    if (price && price->is_number() && price->value <= highest_price) return price->value;
    fields.fault(*node, fmt::format("`{}` is not a price", shortened(node->text)),
                 "write a plain number from 0, such as `6.40`; what it counts is said once, in `money`");
    return std::nullopt;
}

std::string words_of(FieldReader& fields, std::string_view key) {
    const YamlNode* node = fields.optional_scalar(key);
    if (node == nullptr) return {};
    std::string words;
    for (const char c : node->text) {
        const bool gap = static_cast<unsigned char>(c) <= ' ' || c == '\x7F';
        if (!gap) {
            words += c;
        } else if (!words.empty() && words.back() != ' ') {
            words += ' ';
        }
    }
    if (words.ends_with(' ')) words.pop_back();
    if (words.size() > longest_words) {
        fields.fault(*node, fmt::format("this text is longer than {} bytes", longest_words),
                     "write a few words");
    }
    return words;
}

}  // namespace rodwright
