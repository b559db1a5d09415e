#include <nlohmann/json.hpp>

#include "backends/boards/writers.hpp"
#include "backends/cutlist/cells.hpp"

namespace rodwright {
namespace {

using Json = nlohmann::ordered_json;

class PlanWriter {
  public:
    PlanWriter(const Piece& piece, const WoodPlan& plan) : piece_(piece), plan_(plan) {}

    Json whole() const {
        Json root = {{"format", 1}, {"piece", piece_.name}, {"money", plan_.money}};
        root["groups"] = list(plan_.groups, [&](const PlanGroup& each) { return group(each); });
        root["bounds"] = list(plan_.bounds, [](const PlanBound& each) {
            return Json{{"wood", each.wood},         {"title", each.title},
                        {"sheet", each.sheet},       {"boards", each.boards},
                        {"at_least", each.at_least}, {"at_least_by", each.at_least_by},
                        {"proven", each.proven},     {"over", nearest_double(each.over)}};
        });
        root["boards"] = list(plan_.boards, [&](const PlannedBoard& each) { return board(each); });
        root["missing"] = list(plan_.missing, [&](const MissingPiece& each) {
            return Json{{"piece", each.label},
                        {"count", each.count},
                        {"group", each.group},
                        {"length", length(each.size[Axis::wide])},
                        {"width", length(each.size[Axis::deep])}};
        });
        root["remedies"] = plan_.remedies;
        root["purchases"] = list(plan_.purchases, [&](const Purchase& each) {
            return Json{{"what", each.text},
                        {"count", each.count},
                        {"board_feet", nearest_double(each.board_feet)},
                        {"price", nearest_double(each.price)}};
        });
        root["by_the_board_foot"] = list(plan_.by_the_foot, [&](const LumberByTheFoot& each) {
            return Json{{"what", each.text},
                        {"net", nearest_double(each.net)},
                        {"added", nearest_double(each.added)},
                        {"board_feet", nearest_double(each.board_feet)},
                        {"price", nearest_double(each.price)}};
        });
        root["notes"] = plan_.notes;
        return root;
    }

  private:
    const Piece& piece_;
    const WoodPlan& plan_;

    template <typename Values, typename Write>
    static Json list(const Values& values, const Write& write) {
        Json result = Json::array();
        for (const auto& value : values) result.push_back(write(value));
        return result;
    }

    Json length(const Rational& millimetres) const {
        return {{"exact", to_text(millimetres)},
                {"mm", nearest_double(millimetres)},
                {"shown", format_length(millimetres, piece_.style)}};
    }

    Json area(const PlanArea& place) const {
        return {{"from_end", length(place.from_end)},
                {"from_edge", length(place.from_edge)},
                {"length", length(place.length)},
                {"width", length(place.width)}};
    }

    Json group(const PlanGroup& each) const {
        Json object = {{"title", each.title}, {"wood", each.wood}, {"sheet", each.sheet}};
        object["boards"] = each.boards;
        object["complete"] = each.complete;
        return object;
    }

    Json piece_of(const PlannedPiece& each) const {
        Json object = {{"label", each.label}};
        object["leaves"] = each.leaves;
        if (each.show_face) object["show_face"] = *each.show_face == DefectFace::upper ? "upper" : "lower";
        object["parts"] = list(each.parts, [&](const PlannedPart& part) {
            Json entry = {{"part", piece_[part.part].name}};
            if (part.stave > 0) entry["stave"] = {{"number", part.stave}, {"of", part.staves}};
            return entry;
        });
        return object;
    }

    Json region(const PlannedBoard& of, const PlanRegion& each) const {
        static constexpr const char* kinds[] = {"section", "piece", "offcut", "waste"};
        Json object = {{"kind", kinds[static_cast<std::size_t>(each.kind)]}};
        if (!each.name.empty()) object["name"] = each.name;
        if (each.piece) object["piece"] = piece_of(of.pieces[*each.piece]);
        object["area"] = area(each.area);
        return object;
    }

    Json board(const PlannedBoard& each) const {
        static constexpr const char* cares[] = {"none", "narrow", "no_stop", "by_hand"};
        Json object = {{"name", each.name}, {"from_rack", each.origin}, {"sheet", each.sheet}};
        object["length"] = length(each.length);
        object["width"] = length(each.width);
        object["far_width"] = length(each.far_width);
        object["thickness"] = length(each.thickness);
        object["regions"] = list(each.regions, [&](const PlanRegion& part) { return region(each, part); });
        object["cuts"] = list(each.cuts, [&](const PlannedCut& cut) {
            Json line = {{"of", cut.of},
                         {"crosscut", cut.crosscut},
                         {"at", length(cut.at)},
                         {"setting", length(cut.setting)},
                         {"first", cut.first}};
            if (cut.rest) line["rest"] = *cut.rest;
            line["saw"] = cut.saw;
            line["care"] = cares[static_cast<std::size_t>(cut.care)];
            return line;
        });
        return object;
    }
};

}  // namespace

std::string boards_json(const Piece& piece, const WoodPlan& plan) {
    return PlanWriter(piece, plan).whole().dump(2) + "\n";
}

}  // namespace rodwright
