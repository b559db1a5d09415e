#include "compiler/stock/rack/entry_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "compiler/limits.hpp"

namespace rodwright {

namespace {

bool divides(const Rational& value, long steps) {
    return Rational(value * steps).get_den() == 1;
}

// `7`, `1/2`, `7-1/2`
std::string mixed_number(const Rational& value) {
    const Rational whole = floor(value);
    const Rational part = value - whole;
    if (part == 0) return to_text(whole);
    return whole == 0 ? to_text(part) : to_text(whole) + "-" + to_text(part);
}

// `190.5`; `value` is a multiple of 1/10000.
std::string decimal_number(const Rational& value) {
    const Rational whole = floor(value);
    const Rational rest = (value - whole) * 10'000;
    if (rest == 0) return to_text(whole);
    std::string digits = fmt::format("{:04}", rest.get_num().get_si());
    digits.erase(digits.find_last_not_of('0') + 1);
    return to_text(whole) + "." + digits;
}

// In the fewest characters, and never in more digits than a number may have: what is finer than that is no
// length that anybody sawed.
std::string number_text(const Rational& value) {
    if (divides(value, 10'000)) return decimal_number(value);
    std::string text = mixed_number(value);
    if (text.size() <= limits::number_digits) return text;
    return decimal_number(std::max(Rational(floor(value * 1'000) / 1'000), ratio(1, 1'000)));
}

// A scalar that YAML reads as this text: as it is where nothing in it means something else.
std::string scalar_text(const std::string& text) {
    static constexpr std::array<std::string_view, 4> no_value = {"~", "null", "Null", "NULL"};
    const auto letter_or_digit = [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    };
    const auto plain = [&](char c) {
        return letter_or_digit(c) || std::string_view(" -_./%").find(c) != std::string_view::npos;
    };
    if (!text.empty() && letter_or_digit(text.front()) && text.back() != ' ' &&
        std::ranges::all_of(text, plain) &&
        std::ranges::find(no_value, std::string_view(text)) == no_value.end()) {
        return text;
    }
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') quoted += '\\';
        quoted += c;
    }
    return quoted + '"';
}

// The fields of an entry, those that say nothing left out.
class EntryText {
  public:
    explicit EntryText(EntryUnit unit) : unit_(unit) {}

    void word(std::string_view key, const std::string& text) {
        if (!text.empty()) add(key, scalar_text(text));
    }
    void length(std::string_view key, const Rational& value) {
        if (value != 0) add(key, length_text(value, unit_));
    }
    void ends(std::string_view key, const Rational& first, const Rational& second) {
        if (first == 0 && second == 0) return;
        add(key, fmt::format("[{}, {}]", length_text(first, unit_), length_text(second, unit_)));
    }
    void raw(std::string_view key, const std::string& text) { add(key, text); }
    void defects(const std::vector<WoodDefect>& defects);

    std::string text() const { return "{" + fields_ + "}"; }

  private:
    void add(std::string_view key, const std::string& value) {
        fields_ += fmt::format("{}{}: {}", fields_.empty() ? "" : ", ", key, value);
    }

    EntryUnit unit_;
    std::string fields_;
};

void EntryText::defects(const std::vector<WoodDefect>& defects) {
    if (defects.empty()) return;
    std::string list;
    for (const WoodDefect& defect : defects) {
        EntryText fields(unit_);
        fields.raw("from_end", length_text(defect.from_end, unit_));
        fields.raw("from_edge", length_text(defect.from_edge, unit_));
        fields.length("length", defect.length);
        fields.length("width", defect.width);
        if (defect.face == DefectFace::upper) fields.raw("face", "upper");
        if (defect.face == DefectFace::lower) fields.raw("face", "lower");
        fields.word("note", defect.note);
        list += (list.empty() ? "\n   " : ",\n   ") + fields.text();
    }
    fields_ += fmt::format(",\n defects: [{}]", list);
}

}  // namespace

std::string length_text(const Rational& millimetres, EntryUnit unit) {
    if (millimetres == 0) return "0";
    const Rational inches_long = millimetres * ratio(5, 127);
    const bool by_tape = divides(inches_long, 64);
    const bool by_decimals = divides(millimetres, 10'000);
    if (by_tape && (unit == EntryUnit::inch || !by_decimals)) return mixed_number(inches_long) + " in";
    return number_text(millimetres) + "mm";
}

std::string entry_text(const RackBoard& offcut, const std::string& thickness, EntryUnit unit) {
    EntryText fields(unit);
    fields.word("name", offcut.name);
    fields.word("from", offcut.from);
    fields.word("wood", offcut.species);
    fields.word("cut", offcut.cut);
    fields.word("thickness", thickness);
    if (offcut.surfaced) fields.raw("surfaced", "true");
    fields.length("width", offcut.width);
    fields.length("length", offcut.length);
    if (offcut.moisture) fields.raw("moisture", number_text(*offcut.moisture) + "%");
    fields.ends("checks", offcut.checks, offcut.far_checks);
    fields.length("sapwood", offcut.sapwood);
    fields.length("bow", offcut.warp.bow);
    fields.length("cup", offcut.warp.cup);
    fields.length("twist", offcut.warp.twist);
    fields.defects(offcut.defects);
    return fields.text();
}

std::string entry_text(const RackSheet& offcut, const std::string& thickness, EntryUnit unit) {
    EntryText fields(unit);
    fields.word("name", offcut.name);
    fields.word("from", offcut.from);
    fields.word("wood", offcut.species);
    fields.word("thickness", thickness);
    fields.length("length", offcut.length);
    fields.length("width", offcut.width);
    if (offcut.grain == FaceGrain::along_width) fields.raw("grain", "width");
    if (offcut.grain == FaceGrain::none) fields.raw("grain", "none");
    fields.length("trim", offcut.trim);
    fields.defects(offcut.defects);
    return fields.text();
}

}  // namespace rodwright
