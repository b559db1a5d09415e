#include "tests/support/generate.hpp"

#include <fmt/format.h>

namespace rodwright::testing {

namespace {

constexpr int pitch = 700;  // mm from bay to bay
constexpr int width = 680;  // of one bay

// What stands in one bay. `n` ends every name, so that bays can stand in one piece; `left` and `right` are
// its sides, `tall` is the height of its bearers in mm.
std::string bay_text(const std::string& n, const std::string& left, const std::string& right,
                     std::size_t tall) {
    return fmt::format(R"(
  part post{n} of oak, handed deep {{
    grain tall
    left = {left}; wide = 45mm
    front = piece.front; deep = 45mm
    bottom = piece.bottom; top = piece.top
    round(3mm) on long edges
  }}
  part end_post{n} of oak, handed deep {{
    grain tall
    right = {right}; wide = 45mm
    front = piece.front; deep = 45mm
    bottom = piece.bottom; top = piece.top
    chamfer(3mm) on long edges
  }}
  part rail{n}[2] of oak, handed deep {{
    grain wide
    left = post{n}.right; right = end_post{n}.left
    front = piece.front + 10mm; deep = 22mm
    tall = 90mm
  }}
  space rail{n} along tall from piece.bottom + 100mm to piece.top - 50mm {{ ends = 0mm }}
  part bearer{n} of oak {{
    grain deep
    front = post{n}[front].back; back = post{n}[back].front
    left = post{n}.left + 10mm; wide = 22mm
    tall = {tall}mm; top = rail{n}[1].top + 150mm
  }}
  part end_bearer{n} of oak {{
    grain deep
    front = post{n}[front].back; back = post{n}[back].front
    right = end_post{n}.right - 10mm; wide = 22mm
    tall = bearer{n}.tall; top = bearer{n}.top
  }}
  part slat{n}[38] of oak {{
    grain wide
    left = bearer{n}.right; right = end_bearer{n}.left
    deep = 18mm; tall = 16mm
    top = bearer{n}.top - 2mm
    round(2mm) on top front edge, top back edge
  }}
  space slat{n} along deep from post{n}[front].back to post{n}[back].front {{ ends = 5mm }}
  part runner{n}[2] of oak {{
    grain deep
    front = slat{n}[first].front; back = slat{n}[last].back
    wide = 40mm; tall = 16mm
    bottom = slat{n}[1].top
  }}
  space runner{n} along wide from bearer{n}.right to end_bearer{n}.left {{ ends = 40mm }}
  join rail{n}.left to post{n} with mortise_and_tenon(long = 30mm)
  join rail{n}.right to end_post{n} with mortise_and_tenon(long = 30mm)
  join bearer{n}.front, bearer{n}.back to post{n} with mortise_and_tenon(long = 30mm)
  join end_bearer{n}.front, end_bearer{n}.back to end_post{n} with mortise_and_tenon(long = 30mm)
  join slat{n}.left to bearer{n} with housing(depth = 6mm)
  join slat{n}.right to end_bearer{n} with housing(depth = 6mm)
  fasten runner{n}.bottom to slat{n} with screws(number = 6, inset = 6mm)
)",
                       fmt::arg("n", n), fmt::arg("left", left), fmt::arg("right", right),
                       fmt::arg("tall", tall));
}

std::string written_bay(std::size_t number) {
    const std::string left = fmt::format("piece.left + {} * {}mm", number, pitch);
    return bay_text(std::to_string(number), left, fmt::format("{} + {}mm", left, width), 70 + number % 20);
}

std::string placed_bay(std::size_t number) {
    return fmt::format(R"(
  place bay as bay{0} {{
    left = piece.left + {0} * {1}mm; wide = {2}mm
    front = piece.front; deep = piece.deep
    bottom = piece.bottom; tall = piece.tall
  }}
)",
                       number, pitch, width);
}

}  // namespace

std::string store_text(std::size_t bays) {
    std::string text = fmt::format(
        "piece \"Store of the weather station\" {{\n  unit mm to 1/2\n"
        "  wide = {} * {}mm; deep = 950mm; tall = 900mm\n  wood oak = white_oak quartered\n",
        bays, pitch);
    text += "  assembly bay() {" + bay_text("", "piece.left", "piece.right", 70) + "  }\n";
    for (std::size_t i = 0; i < bays; ++i) text += i % 2 == 0 ? written_bay(i) : placed_bay(i);
    return text + "}\n";
}

}  // namespace rodwright::testing
