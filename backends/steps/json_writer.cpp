#include <nlohmann/json.hpp>

#include "backends/steps/writers.hpp"
#include "backends/work_words.hpp"

namespace rodwright {
namespace {

using Json = nlohmann::ordered_json;

class StepsJson {
  public:
    StepsJson(const Piece& piece, const WorkPlan& plan) : piece_(piece), plan_(plan) {}

    Json write() const {
        Json root = {{"format", 2}, {"piece", plan_.title}, {"caution", plan_.caution}};
        root["sums"] = sums();
        root["stages"] = Json::array();
        for (const StageNote& note : plan_.stages)
            root["stages"].push_back({{"stage", stage_word(note.stage)}, {"because", note.because}});
        root["done"] = Json::array();
        for (const Operation& operation : plan_.done)
            root["done"].push_back(
                {{"work", operation.work}, {"name", operation.name}, {"parts", parts(operation)}});
        root["steps"] = Json::array();
        for (std::size_t i = 0; i < plan_.operations.size(); ++i) root["steps"].push_back(step(i));
        root["set_ups"] = Json::array();
        for (std::size_t i = 0; i < plan_.set_ups.size(); ++i) root["set_ups"].push_back(set_up(i));
        root["glue_ups"] = Json::array();
        for (std::size_t i = 0; i < plan_.glue_ups.size(); ++i) root["glue_ups"].push_back(glue_up(i));
        return root;
    }

  private:
    std::string said(const Phrase& phrase) const { return read_out(phrase, piece_.style); }

    Json sums() const {
        const WorkSums& sums = plan_.sums;
        return {{"workers", sums.workers},
                {"day", sums.day},
                {"hands", sums.hands},
                {"makespan", sums.makespan},
                {"makespan_at_least", sums.makespan_bound},
                {"because", sums.bound_reason},
                {"set_ups", sums.set_ups},
                {"set_ups_at_least", sums.set_ups_bound},
                {"times_assumed", sums.assumed}};
    }

    Json parts(const Operation& operation) const {
        Json parts = Json::array();
        for (const WorkedKind& each : operation.kinds) {
            const Kind& kind = piece_[each.kind];
            parts.push_back({{"item", kind.letter}, {"part", kind.name}, {"count", each.count}});
        }
        return parts;
    }

    Json settings(const std::vector<StepSetting>& settings) const {
        Json values = Json::object();
        for (const StepSetting& setting : settings) values[setting.name] = said(setting.value);
        return values;
    }

    Json step(std::size_t number) const {
        const Operation& operation = plan_.operations[number];
        Json object = {{"number", number + 1},
                       {"stage", stage_word(operation.stage)},
                       {"work", operation.work},
                       {"name", operation.name}};
        object["text"] = Json::array();
        for (const Phrase& line : operation.text) object["text"].push_back(said(line));
        object["parts"] = parts(operation);
        object["machine"] = operation.machine;
        object["cutter"] = cutter_words(operation.cutter, piece_.style);
        object["settings"] = settings(operation.settings);
        object["set_up"] = operation.set_up ? Json(*operation.set_up + 1) : Json();
        object["sets_up"] = operation.time.sets_up;
        object["glue_up"] = operation.glue_up ? Json(*operation.glue_up + 1) : Json();
        object["test_piece"] = operation.test_piece;
        object["caution"] = said(operation.caution);
        object["time"] = {{"set_up", operation.labour.set_up},
                          {"work", operation.labour.work},
                          {"assumed", operation.labour.assumed},
                          {"wait", operation.wait},
                          {"worker", operation.time.worker + 1},
                          {"begin", operation.time.begin},
                          {"end", operation.time.end}};
        object["after"] = Json::array();
        for (const WorkReason& reason : operation.after)
            object["after"].push_back(
                {{"step", reason.after + 1}, {"because", said(reason.because)}, {"wait", reason.wait}});
        return object;
    }

    Json set_up(std::size_t number) const {
        const SetUp& set_up = plan_.set_ups[number];
        Json object = {{"number", number + 1},
                       {"machine", set_up.machine},
                       {"cutter", cutter_words(set_up.cutter, piece_.style)},
                       {"settings", settings(set_up.settings)},
                       {"worked_out", arithmetic_words(set_up.settings, piece_.style)},
                       {"test_piece", set_up.test_piece},
                       {"time", set_up.time}};
        object["steps"] = Json::array();
        for (const std::size_t step : set_up.operations) object["steps"].push_back(step + 1);
        return object;
    }

    Json names(const std::vector<PartId>& parts) const {
        Json names = Json::array();
        for (const PartId part : parts) names.push_back(piece_[part].name);
        return names;
    }

    Json glue_up(std::size_t number) const {
        const GlueUp& glue_up = plan_.glue_ups[number];
        Json object = {{"number", number + 1}, {"parts", names(glue_up.parts)}, {"joints", glue_up.joints}};
        object["motions"] = Json::array();
        for (const BringIn& motion : glue_up.motions) {
            object["motions"].push_back({{"goes", names(motion.goes)},
                                         {"to", names(motion.to)},
                                         {"way", direction_words(motion.way)},
                                         {"glued", motion.glued.size()},
                                         {"dry", motion.dry.size()}});
        }
        object["open_needed"] = glue_up.open_needed;
        object["clamps"] = Json::array();
        for (const ClampUse& clamps : glue_up.clamps) {
            object["clamps"].push_back({{"along", axis_name(clamps.along)},
                                        {"reach_mm", clamps.reach.get_d()},
                                        {"count", clamps.count}});
        }
        object["diagonal_mm"] = glue_up.diagonal ? Json(glue_up.diagonal->length) : Json();
        return object;
    }

    const Piece& piece_;
    const WorkPlan& plan_;
};

}  // namespace

std::string steps_json(const Piece& piece, const WorkPlan& plan) {
    return StepsJson(piece, plan).write().dump(2) + "\n";
}

}  // namespace rodwright
