#include "compiler/workplan/operations/definition_work.hpp"

#include <algorithm>
#include <iterator>
#include <map>

#include "compiler/words.hpp"
#include "compiler/workplan/operations/part_groups.hpp"
#include "compiler/workplan/operations/role_names.hpp"
#include "compiler/workplan/operations/tooling.hpp"

namespace rodwright {
namespace {

// Adds work, or its parts to work that is the same already.
class Collector {
  public:
    explicit Collector(const LengthStyle& style) : style_(style) {}

    void add(WorkItem item, const NamedParts& named) {
        const auto [place, is_new] = by_text_.try_emplace(key(item), items_.size());
        if (is_new) {
            items_.push_back(std::move(item));
            named_.push_back(named);
        } else {
            join(place->second, item, named);
        }
    }

    std::vector<WorkItem> take() {
        for (std::size_t i = 0; i < items_.size(); ++i) {
            for (Phrase& line : items_[i].operation.text) line = with_names(line, named_[i]);
        }
        return std::move(items_);
    }

  private:
    std::string key(const WorkItem& item) const {
        const Operation& operation = item.operation;
        std::vector<std::string> words = {operation.work, operation.name, item.member, operation.machine,
                                          read_out(operation.caution, style_)};
        for (const Phrase& line : operation.text) words.push_back(read_by_role(line, style_));
        for (const StepSetting& setting : operation.settings)
            words.insert(words.end(), {setting.name, read_out(setting.value, style_)});
        return joined(words, std::string_view("\0", 1));
    }

    void join(std::size_t place, WorkItem& more, const NamedParts& named) {
        WorkItem& item = items_[place];
        item.parts |= more.parts;
        item.uses.merge(more.uses);
        item.operation.times += more.operation.times;
        item.operation.labour.work += more.operation.labour.work;
        std::ranges::move(more.limits, std::back_inserter(item.limits));
        for (const WorkAfter& after : more.after) {
            if (std::ranges::find(item.after, after) == item.after.end()) item.after.push_back(after);
        }
        add_names(named_[place], named);
    }

    const LengthStyle& style_;
    std::vector<WorkItem> items_;
    std::vector<NamedParts> named_;
    std::map<std::string, std::size_t> by_text_;
};

// The stage in which a definition's step is done, by its name; what it must come after may make it later.
Stage usual_stage(const StepTemplate& step, bool of_shape) {
    if (of_shape) return Stage::shaping;
    if (step.name == "lay_out") return Stage::lay_out;
    return step.name == "fasten" ? Stage::assembly : Stage::joinery;
}

class DefinitionWork {
  public:
    DefinitionWork(const Piece& piece, const WorkData& data, Diagnostics& diagnostics)
        : piece_(piece), data_(data), diagnostics_(diagnostics), items_(piece.style) {}

    std::vector<WorkItem> collect() {
        for (std::size_t i = 0; i < piece_.joint_kinds.size(); ++i) add_joint(i);
        for (std::size_t i = 0; i < piece_.kinds.size(); ++i) add_shapes(i);
        return items_.take();
    }

  private:
    void add_joint(std::size_t index) {
        const JointKind& kind = piece_.joint_kinds[index];
        for (const StepTemplate& step : kind.work.steps) {
            if (closes_joint(step.name)) continue;
            PartSet parts(piece_.parts.size());
            ToolingJob job{kind.work, step, piece_[kind.joints.front()].where, {}};
            for (const JointId id : kind.joints) {
                for (const JointMember& member : piece_[id].members) {
                    if (!step.member.empty() && member.role != step.member) continue;
                    parts.set(static_cast<std::size_t>(member.part));
                    if (!step.member.empty()) stand_under(member, job.asked);
                }
            }
            add(std::move(job), std::move(parts), index, kind.joints.size(), false);
        }
    }

    void add_shapes(std::size_t index) {
        const Kind& kind = piece_.kinds[index];
        for (const ShapeUse& use : kind.shapes) {
            for (const StepTemplate& step : use.work.steps) {
                PartSet parts(piece_.parts.size());
                for (const PartId part : kind.parts) parts.set(static_cast<std::size_t>(part));
                add({use.work, step, use.where, {}}, std::move(parts), piece_.joint_kinds.size() + index,
                    kind.parts.size(), true);
            }
        }
    }

    // The member lies with the face that is worked on upwards, or stands on its other end.
    void stand_under(const JointMember& member, AskedWork& asked) const {
        const Rational& under = piece_[member.part].body.size(axis_of(member.face));
        if (asked.tallest != PartId::none && under <= asked.under) return;
        asked.tallest = member.part;
        asked.under = under;
    }

    void add(ToolingJob job, PartSet parts, std::size_t use, std::size_t times, bool of_shape) {
        const Work& work = job.work;
        const StepTemplate& step = job.step;
        WorkItem item;
        Operation& operation = item.operation;
        operation.stage = usual_stage(step, of_shape);
        operation.work = work.definition;
        operation.name = step.name;
        operation.text.push_back(step.text);
        operation.times = times;
        operation.settings = step.settings;
        operation.test_piece = step.test_piece;
        operation.caution = step.caution;
        job.asked.parts = part_list(parts);
        item.limits = choose_tooling(piece_, operation, std::move(job), data_.shop, diagnostics_);
        const TimeNeeded& time = data_.operations.time_for(work.definition, step.name, operation.machine);
        operation.labour = {static_cast<Seconds>(time.set_up.get_d()),
                            static_cast<Seconds>(time.each.get_d() * static_cast<double>(times) + 0.5),
                            time.assumed};
        item.member = step.member;
        item.parts = std::move(parts);
        item.uses.insert(use);
        for (const StepAfter& after : step.after)
            item.after.push_back({work.definition, after.step, after.because});
        item.where = step.where;
        items_.add(std::move(item), named_in(step.text));
    }

    const Piece& piece_;
    const WorkData& data_;
    Diagnostics& diagnostics_;
    Collector items_;
};

}  // namespace

bool closes_joint(const std::string& step) {
    return step == "glue" || step == "close";
}

std::vector<WorkItem> definition_work(const Piece& piece, const WorkData& data, Diagnostics& diagnostics) {
    return DefinitionWork(piece, data, diagnostics).collect();
}

}  // namespace rodwright
