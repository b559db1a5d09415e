#include "rod_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace rodwright {
namespace {

const char* const every_design_statement = R"rod(use "stock.rod"
-- A table of the weather station on Gull Rock.

piece "Keeper's table" {
  unit in to 1/32                      -- how lengths are shown
  unit mm

  param length = 42"  from 30" to 60"
  param thick = 3/4 in
  param price = 12.50 USD
  let   top_thick = 13/16"
  let slope_ = 1:8; let share = 8 %; let lean = 14deg; let heat = 70F
  let feet = 4'2-1/2" + 4' 2" - 4'-2-1/2" + 4' + 3 ft
  wide = length; deep = depth; tall = height       -- the piece's own envelope
  wood ash = white_ash quartered 8 4

  part leg of ash, handed wide deep {   -- four legs
    grain tall
    thick deep
    thick = 3/4"
    left = piece.left + 2"
    leg[left front].back = slat[3].top
    slat[n + 1].front = leg[last].front
    taper(to = 1-1/8", from_top = 5",) on inside faces, left end
    round on long edges
    rake 6deg at bottom; splay 1/2 * lean
    rake -6deg
    glued from boards alternating
    glued from 3 boards, each 3" to 5" alternating
    glued from 5 boards
    show top face
  }
  part slat[9] of ash { }
  part pin[fit], handed wide {}
  part peg[2 * n] { grain wide }

  space slat along deep from leg[front].back to leg[back].front {
    ends = 1/4"
  }
  space pin along wide from 0" to 3"
  join side_apron.front, x to leg with mortise_and_tenon(long = 1-1/8", haunch = none)
  fasten top to side_apron,
         back_apron with buttons
  load 150 lbf on top.front at middle
  load 5 kg on top
  use seat for 2 on seat, bench[left]
  use shelf books
  use table
  match leg[left], leg[right] from one board
  match slat[1], slat[2], slat[3] in sequence
  match door[left], door[right] as book
  require height - top_thick >= 24"  "no room for knees"
  require not a and b or c != 3 and not not (d <= 4) and e > 1 and f < 1
  a = (b + c) * -d - f(1, x = 2, (1", 2")) / g()
  b = if a > 1 then 2 else if a == 3 then given else -(-x)
  if not a { x = 1 } else if b { y = 2 } else { z = 3 }
  if a { x = 1 } else { y = 2 }
  finish oil_varnish coats 3
  finish soap
  assembly drawer(w, d = 3", h = if a then b else c) { wide = w }
  assembly tray { }
  place drawer as till(2", d = 3") { left = leg.right }
  place tray as upper
  variant "window seat" { length = 60" }
  made leg[left] { wide = 1-47/64" }
  done mill, mortise_and_tenon.cut_mortise, assembly on leg[left], rail
  done flatten_face
  part back { take wide, tall from the work over 1/2" }
  accept wide_gap because "seen and liked"
  accept W1102 on leg, rail[left] because "mitred"
  opens by 10"
  climate 30% to 65% at 68F
  climate 30% to 65% at 20C made at 8%
}
)rod";

const char* const every_body_statement = R"rod(joint mortise_and_tenon(tenon: end, mortise: face) {
  "A tongue on the end of one part, glued into a pocket in the face of another."

  thick    = nearest chisel to tenon.thick / 3   -- a third
  shoulder = 1/4"; haunch = none
  extend tenon by long
  leave  tenon   box(thick, tenon.width - 2 * shoulder, long)
  remove mortise box(thick, tenon.width, long + glue_gap) at (0, 1", 2") along mortise.into
      -- pins
  remove mortise cylinder(d) repeat 3 every 2" along mortise.along at (0, 1")
  trim tenon half()
  blend arris by 1/8"
  bevel arris by 1/16"
  slides along tenon.out
  lets tenon move along -inward by long - 1/4"
  lets tenon move along widthwise by 1/8" either way
  lets tenon move along thickwise either way
  glue   cheeks, shoulders faces
  hold dowel cylinder(d, long) repeat 3 every 2" along mortise.along at (0, 1")
  check thick <= 1/2 * mortise.thick  else warn "more than half the thickness"
  check if a then b else c else error "no"
  needs chisel thick | straight_bit thick reach long - 1" 3 (in) x + y
  supply glue 3 oz "hide or white"
  supply pegs 4
  step lay_out  "Mark the mortises from the {mortise.reference} face."
  step cut mortise  using mortiser { fence = 3", depth = long + glue_gap
    stop = "at the line" }  test_piece
  step cut tenon after lay_out, cut because "the mortise is the harder to fit" caution "mind the stop"
  step fit using mallet
  step glue {}
}
shape arch(at: part) {
  shape inner(e: edges) { }
  joint other(a: edge) { }
}
made leg { wide = 1" }
)rod";

const char* const words_as_names = R"rod(thick = 1/4"
long = thick * 2; step = 3; part_ = 4
wide = leg; deep = leg
left = piece.left + 2"
glue.at = load[1] + check(2, by = 3)
at = to + on - with * from / every
space - 3" = join
require= 3; grain[left] = 3
)rod";

}  // namespace

Parsed::Parsed(std::string text) : file(sources->add("test.rod", std::move(text))) {
    tree = parse(*sources, file, diagnostics);
}

std::string Parsed::report() const {
    std::string out;
    for (const Diagnostic& each : diagnostics.list()) {
        const Position at = sources->position(file, each.primary.begin);
        out += fmt::format("{}:{}-{} {} {}", at.line, at.column, each.primary.end - each.primary.begin,
                           info(each.code).code, each.message);
        if (!each.help.empty()) out += " | help: " + each.help;
        for (const Label& label : each.labels) {
            const Position place = sources->position(file, label.span.begin);
            out += fmt::format(" | {}:{} {}", place.line, place.column, label.text);
        }
        out += '\n';
    }
    return out;
}

std::size_t Parsed::count(NodeKind kind) const {
    return static_cast<std::size_t>(std::ranges::count(tree.nodes(), kind, &Node::kind));
}

std::vector<std::string> Parsed::comments() const {
    std::vector<std::string> texts;
    for (const Comment& comment : tree.comments()) {
        texts.emplace_back(tree.source().substr(comment.begin, comment.end - comment.begin));
        texts.back().erase(texts.back().find_last_not_of(" \t\r") + 1);
    }
    return texts;
}

std::string meaning(const Tree& tree) {
    std::string out;
    std::vector<std::uint32_t> ends;
    for (std::uint32_t i = 0; i < tree.nodes().size(); ++i) {
        while (!ends.empty() && ends.back() <= i) {
            out += ')';
            ends.pop_back();
        }
        const Node& node = tree.nodes()[i];
        out += fmt::format(" ({} {}", kind_name(node.kind), operator_text(node.op));
        if (node.after == i + 1 && node.kind != NodeKind::block && node.kind != NodeKind::file) {
            out += tree.text(NodeId{i});
        }
        ends.push_back(node.after);
    }
    return out;
}

std::vector<Sample> samples() {
    std::vector<Sample> all = {{"design statements", every_design_statement},
                               {"body statements", every_body_statement},
                               {"words as names", words_as_names}};
    for (const char* folder : {"stdlib", "examples"}) {
        const std::filesystem::path root = std::filesystem::path(RODWRIGHT_SOURCE_DIR) / folder;
        if (!std::filesystem::is_directory(root)) continue;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(root)) {
            if (entry.path().extension() != ".rod") continue;
            std::ifstream file(entry.path(), std::ios::binary);
            all.push_back({entry.path().lexically_relative(RODWRIGHT_SOURCE_DIR).string(),
                           {std::istreambuf_iterator<char>(file), {}}});
        }
    }
    std::ranges::sort(all, {}, &Sample::name);
    return all;
}

}  // namespace rodwright
