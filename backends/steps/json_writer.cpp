#include <nlohmann/json.hpp>

#include "backends/steps/writers.hpp"

namespace rodwright {
namespace {

using Json = nlohmann::ordered_json;

Json parts_json(const Step& step) {
    Json parts = Json::array();
    for (const StepPart& part : step.parts) {
        parts.push_back({{"item", part.letter}, {"part", part.name}, {"count", part.count}});
    }
    return parts;
}

Json step_json(const Step& step, std::size_t number) {
    Json object = {
        {"number", number}, {"stage", stage_word(step.stage)}, {"work", step.work}, {"name", step.name}};
    object["text"] = step.text;
    object["parts"] = parts_json(step);
    object["machine"] = step.machine;
    object["settings"] = Json::object();
    for (const auto& [name, value] : step.settings) object["settings"][name] = value;
    object["test_piece"] = step.test_piece;
    object["caution"] = step.caution;
    object["after"] = Json::array();
    for (const StepReason& reason : step.after) {
        object["after"].push_back({{"step", reason.after + 1}, {"because", reason.because}});
    }
    return object;
}

}  // namespace

std::string steps_json(const StepList& list) {
    Json root = {{"format", 1}, {"piece", list.title}, {"caution", list.caution}};
    root["stages"] = Json::array();
    for (const StageNote& note : list.stages) {
        root["stages"].push_back({{"stage", stage_word(note.stage)}, {"because", note.because}});
    }
    root["steps"] = Json::array();
    for (std::size_t i = 0; i < list.steps.size(); ++i)
        root["steps"].push_back(step_json(list.steps[i], i + 1));
    return root.dump(2) + "\n";
}

}  // namespace rodwright
