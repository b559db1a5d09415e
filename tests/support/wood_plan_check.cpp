#include "tests/support/wood_plan_check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace rodwright::testing {
namespace {

// Boards are rounded down to what a tape shows, 1/32 in or 1/2 mm, once at each end.
const Rational rounding = 2;

class Checker {
  public:
    Checker(const WoodPlan& plan, const Piece& piece, const WoodSupply& supply)
        : plan_(plan), piece_(piece), rack_(*supply.rack), milling_(supply.milling) {}

    std::vector<std::string> run() {
        for (const PlannedBoard& board : plan_.boards) {
            check_board(board);
            check_cuts(board);
            for (const PlannedCut& cut : board.cuts) check_saw(board, cut);
            for (const PlanRegion& region : board.regions) check_region(board, region);
        }
        check_counts();
        check_parts();
        return std::move(faults_);
    }

  private:
    const WoodPlan& plan_;
    const Piece& piece_;
    const Rack& rack_;
    const MillingData& milling_;
    std::vector<std::string> faults_;
    std::map<PartId, int> whole_;
    std::map<PartId, std::map<int, Rational>> staves_;  // width by number
    std::map<PartId, int> stave_count_;

    void fault(const PlannedBoard& board, const std::string& what) {
        faults_.push_back(board.name + ": " + what);
    }

    const RackBoard* rack_board(const PlannedBoard& board) const {
        const auto found = std::ranges::find(rack_.boards, board.origin, &RackBoard::name);
        return found == rack_.boards.end() ? nullptr : &*found;
    }
    const RackSheet* rack_sheet(const PlannedBoard& board) const {
        const auto found = std::ranges::find(rack_.sheets, board.origin, &RackSheet::name);
        return found == rack_.sheets.end() ? nullptr : &*found;
    }

    void check_board(const PlannedBoard& board) {
        if (board.origin.empty()) return check_bought(board);
        if (board.sheet) {
            const RackSheet* sheet = rack_sheet(board);
            if (sheet == nullptr) return fault(board, "is no sheet of the rack");
            const bool across = sheet->grain == FaceGrain::along_width;
            const bool same = board.length == (across ? sheet->width : sheet->length) &&
                              board.width == (across ? sheet->length : sheet->width) &&
                              board.thickness == sheet->thickness;
            if (!same) fault(board, "has another size in the rack");
            return;
        }
        const RackBoard* own = rack_board(board);
        if (own == nullptr) return fault(board, "is no board of the rack");
        const bool same = board.length == own->length && board.width == own->width &&
                          board.far_width == own->far_width && board.thickness == own->thickness;
        if (!same) fault(board, "has another size in the rack");
    }

    void check_bought(const PlannedBoard& board) {
        const bool lumber = std::ranges::any_of(rack_.lumber, [&](const LumberOffer& offer) {
            return std::ranges::find(offer.thicknesses, board.thickness) != offer.thicknesses.end() &&
                   offer.shortest <= board.length && board.length <= offer.longest &&
                   offer.narrowest <= board.width && board.width <= offer.widest;
        });
        const bool sheet = std::ranges::any_of(rack_.sheet_offers, [&](const SheetOffer& offer) {
            const Rational area = offer.length * offer.width;
            return offer.thickness == board.thickness && area == board.length * board.width;
        });
        if (board.sheet ? !sheet : !lumber) fault(board, "is not sold by the dealer");
    }

    static Rational near(const PlanArea& area, bool crosscut) {
        return crosscut ? area.from_end : area.from_edge;
    }
    static Rational extent(const PlanArea& area, bool crosscut) {
        return crosscut ? area.length : area.width;
    }

    // Each cut divides a region that is there and whole, along its full width.
    void check_cuts(const PlannedBoard& board) {
        std::vector<bool> there(board.regions.size(), false);
        if (there.empty()) return fault(board, "has no region");
        there[0] = true;
        const PlanArea& whole = board.regions[0].area;
        if (whole.from_end != 0 || whole.length != board.length || whole.from_edge != 0 ||
            whole.width != std::max(board.width, board.far_width))
            fault(board, "does not begin with the whole board");
        for (const PlannedCut& cut : board.cuts) {
            if (!there[cut.of]) fault(board, "a cut of what is not there");
            there[cut.of] = false;
            there[cut.first] = true;
            check_halves(board, cut);
            if (cut.rest) there[*cut.rest] = true;
        }
        for (std::size_t i = 0; i < there.size(); ++i) {
            if (there[i] && board.regions[i].kind == PlanRegion::Kind::section)
                fault(board, "a section is left");
            if (!there[i] && board.regions[i].kind != PlanRegion::Kind::section)
                fault(board, "a piece is cut");
        }
    }

    void check_halves(const PlannedBoard& board, const PlannedCut& cut) {
        const bool way = cut.crosscut;
        const PlanArea& of = board.regions[cut.of].area;
        const PlanArea& first = board.regions[cut.first].area;
        const Rational kerf = way ? board.crosscut_kerf : board.rip_kerf;
        const Rational end = near(of, way) + extent(of, way);
        const bool starts =
            near(first, way) == near(of, way) && near(first, way) + extent(first, way) == cut.at;
        if (!starts || cut.setting != extent(first, way)) fault(board, "a cut is not where its piece ends");
        if (cut.at > end) fault(board, "a cut beyond the edge");
        if (near(first, !way) != near(of, !way) || extent(first, !way) > extent(of, !way) ||
            extent(first, !way) < extent(of, !way) - rounding)
            fault(board, "a cut is not from edge to edge");
        if (!cut.rest) {
            if (end - cut.at > kerf + rounding) fault(board, "a rest is lost");
            return;
        }
        const PlanArea& rest = board.regions[*cut.rest].area;
        if (near(rest, way) < cut.at + kerf) fault(board, "a kerf is missing");
        const Rational rest_end = near(rest, way) + extent(rest, way);
        if (rest_end > end || rest_end < end - rounding) fault(board, "a rest does not reach the end");
    }

    void check_saw(const PlannedBoard& board, const PlannedCut& cut) {
        const PlanArea& of = board.regions[cut.of].area;
        const SawLimits& limits = milling_.saw_limits;
        const Rational run = extent(of, !cut.crosscut);
        const Rational off = extent(board.regions[cut.first].area, cut.crosscut);
        Rational side = off;
        if (cut.rest) side = std::max(side, extent(board.regions[*cut.rest].area, cut.crosscut));
        const bool held = side + rounding >= limits.shortest_mitre_saw;
        const bool guided = run >= limits.shortest_rip;
        const auto refuse = [&](const std::string& what) {
            fault(board, fmt::format("{} at {}: {}", cut.saw, to_text(cut.at), what));
        };
        if (cut.saw.empty()) return refuse("no saw");
        const bool stops = cut.saw == "mitre_saw" || cut.saw == "table_saw";
        const bool loose = cut.crosscut && !board.sheet && stops && off < limits.shortest_mitre_saw;
        if (loose != (cut.care == CutCare::no_stop)) refuse("loose before a stop, or said to be");
        if (milling_.kerf(cut.saw) > (cut.crosscut ? board.crosscut_kerf : board.rip_kerf))
            refuse("its kerf is wider than the plan's");
        if (cut.care == CutCare::by_hand) {
            if (guided || side >= limits.shortest_mitre_saw) refuse("could be cut by machine");
            if (cut.saw.find("hand_") != 0) refuse("is no hand saw");
        } else if (cut.saw == "mitre_saw") {
            if (!held) refuse("neither side can be held");
            if (run > limits.widest_mitre_saw) refuse("wider than the saw");
        } else if (cut.saw == "table_saw") {
            const bool fence = guided && off <= limits.widest_rip && (board.sheet || !cut.crosscut);
            const bool sled = held && run <= limits.longest_crosscut;
            if (!fence && !sled) refuse("neither fence nor sled takes it");
            const bool large = std::max(of.length, of.width) > limits.sheet_length ||
                               std::min(of.length, of.width) > limits.sheet_width;
            if (board.sheet && large && std::min(of.length, of.width) > limits.shortest_rip)
                refuse("a sheet that has to be broken down first");
            const bool narrow = fence && off < limits.narrowest_rip;
            if (narrow != (cut.care == CutCare::narrow)) refuse("narrow, or said to be");
        } else if (cut.saw == "circular_saw") {
            if (!held && !guided) refuse("too small to be clamped");
        }
    }

    static bool meet(const PlanArea& a, const Rational& from_end, const Rational& from_edge,
                     const Rational& length, const Rational& width) {
        return a.from_end < from_end + length && from_end < a.from_end + a.length &&
               a.from_edge < from_edge + width && from_edge < a.from_edge + a.width;
    }

    void check_region(const PlannedBoard& board, const PlanRegion& region) {
        if (region.kind != PlanRegion::Kind::piece) return;
        const PlannedPiece& planned = board.pieces[*region.piece];
        check_place(board, region.area, planned);
        check_piece(board, region.area, planned);
    }

    // Where of every part one broad face alone is seen, the other may have them.
    void check_defects(const PlannedBoard& board, const RackBoard& own, const PlanArea& area,
                       const PlannedPiece& planned) {
        std::set<DefectFace> faces;
        for (const WoodDefect& defect : own.defects) {
            if (meet(area, defect.from_end, defect.from_edge, defect.length, defect.width))
                faces.insert(defect.face);
        }
        if (faces.empty()) return;
        bool hidden_face = planned.leaves == 1;
        for (const PlannedPart& part : planned.parts)
            hidden_face = hidden_face && piece_[piece_[part.part].kind].one_show_face;
        if (!hidden_face || faces.size() > 1 || faces.contains(DefectFace::both))
            fault(board, planned.label + " lies on a defect");
        if (hidden_face && (!planned.show_face || faces.contains(*planned.show_face)))
            fault(board, planned.label + " has a defect on its show face");
    }

    void check_place(const PlannedBoard& board, const PlanArea& area, const PlannedPiece& planned) {
        const std::string& label = planned.label;
        if (const RackSheet* sheet = board.sheet ? rack_sheet(board) : nullptr) {
            const bool across = sheet->grain == FaceGrain::along_width;
            for (const WoodDefect& defect : sheet->defects) {
                const bool on =
                    across ? meet(area, defect.from_edge, defect.from_end, defect.width, defect.length)
                           : meet(area, defect.from_end, defect.from_edge, defect.length, defect.width);
                if (on) fault(board, label + " lies on a defect");
            }
            const bool inside = area.from_end >= sheet->trim && area.from_edge >= sheet->trim &&
                                area.from_end + area.length <= board.length - sheet->trim &&
                                area.from_edge + area.width <= board.width - sheet->trim;
            if (!inside) fault(board, label + " lies on a factory edge");
            return;
        }
        const RackBoard* own = rack_board(board);
        if (own == nullptr) return;
        check_defects(board, *own, area, planned);
        if (area.from_end < own->checks || area.from_end + area.length > own->length - own->far_checks)
            fault(board, label + " lies on an end check");
        for (const Rational& at : {area.from_end, Rational(area.from_end + area.length)}) {
            const Rational edge =
                own->width + (own->far_width - own->width) * at / own->length - own->sapwood;
            if (area.from_edge + area.width > edge) fault(board, label + " lies beyond the sound edge");
        }
    }

    void check_piece(const PlannedBoard& board, const PlanArea& area, const PlannedPiece& planned) {
        Rational length = 0;
        Rational width = 0;
        Rational thickness = 0;
        const std::size_t in_leaf = planned.parts.size() / static_cast<std::size_t>(planned.leaves);
        if (in_leaf * static_cast<std::size_t>(planned.leaves) != planned.parts.size())
            fault(board, planned.label + ": its leaves are not alike");
        for (std::size_t i = 0; i < planned.parts.size(); ++i) {
            const PlannedPart& each = planned.parts[i];
            const Kind& kind = piece_[piece_[each.part].kind];
            const Wood* wood = piece_.find_wood(kind.wood);
            if (wood == nullptr) {
                fault(board, planned.label + " has no wood");
                continue;
            }
            check_wood(board, *wood, planned);
            if (i < in_leaf) length += kind.overall(Axis::wide);
            if (each.stave == 0) width = std::max(width, kind.overall(Axis::deep));
            thickness = std::max(thickness, kind.overall(Axis::tall));
            count(board, area, planned, each);
        }
        const bool along = area.length >= length && area.width >= width;
        const bool across = no_grain(board) && area.length >= width && area.width >= length;
        if (!along && !across)
            fault(board, planned.label + " is too small for its part, or lies across the grain");
        constexpr double tolerance = 0.8;  // sheets are as thick as they come
        const Rational lacking = thickness * planned.leaves - board.thickness;
        if (lacking > 0 && !(board.sheet && lacking.get_d() <= tolerance))
            fault(board, planned.label + " is too thin");
    }

    void count(const PlannedBoard& board, const PlanArea& area, const PlannedPiece& planned,
               const PlannedPart& each) {
        if (each.stave == 0) {
            ++whole_[each.part];
            return;
        }
        if (!staves_[each.part].emplace(each.stave, area.width).second)
            fault(board, planned.label + " is there twice");
        stave_count_[each.part] = each.staves;
    }

    bool no_grain(const PlannedBoard& board) const {
        const RackSheet* sheet = rack_sheet(board);
        return sheet != nullptr && sheet->grain == FaceGrain::none;
    }

    void check_wood(const PlannedBoard& board, const Wood& wood, const PlannedPiece& planned) {
        const RackBoard* own = rack_board(board);
        const RackSheet* sheet = rack_sheet(board);
        const std::string species = own != nullptr     ? own->species
                                    : sheet != nullptr ? sheet->species
                                                       : wood.species;
        if (species != wood.species) fault(board, planned.label + " is of another wood");
    }

    void check_counts() {
        std::map<std::string, int> used;
        for (const PlannedBoard& board : plan_.boards) {
            if (!board.origin.empty()) ++used[board.origin];
        }
        for (const RackBoard& board : rack_.boards) {
            if (used[board.name] > board.count) faults_.push_back(board.name + ": used too often");
        }
        for (const RackSheet& sheet : rack_.sheets) {
            if (used[sheet.name] > sheet.count) faults_.push_back(sheet.name + ": used too often");
        }
    }

    void check_parts() {
        std::size_t missing = 0;
        for (std::size_t i = 0; i < piece_.parts.size(); ++i) {
            const auto part = static_cast<PartId>(i);
            const Kind& kind = piece_[piece_[part].kind];
            if (piece_.find_wood(kind.wood) == nullptr) continue;
            const int count = whole_[part];
            if (const auto widths = staves_.find(part); widths != staves_.end()) {
                if (count != 0) faults_.push_back(piece_[part].name + ": planned whole and in staves");
                check_staves(part, kind, widths->second);
            } else if (count > 1) {
                faults_.push_back(piece_[part].name + ": planned twice");
            } else if (count == 0) {
                ++missing;
            }
        }
        if (plan_.complete() && missing > 0)
            faults_.push_back(fmt::format("{} parts have no piece", missing));
    }

    void check_staves(PartId part, const Kind& kind, const std::map<int, Rational>& widths) {
        if (!plan_.complete()) return;
        if (static_cast<int>(widths.size()) != stave_count_[part])
            faults_.push_back(piece_[part].name + ": not all staves are there");
        Rational sum = 0;
        for (const auto& [number, width] : widths) sum += width;
        if (sum < kind.overall(Axis::deep))
            faults_.push_back(piece_[part].name + ": its staves are too narrow");
    }
};

}  // namespace

std::vector<std::string> faults_of(const WoodPlan& plan, const Piece& piece, const WoodSupply& supply) {
    return Checker(plan, piece, supply).run();
}

}  // namespace rodwright::testing
