#include "compiler/workplan/operations/general_work.hpp"

#include <algorithm>
#include <functional>
#include <iterator>
#include <map>

#include "compiler/words.hpp"
#include "compiler/workplan/operations/definition_work.hpp"
#include "compiler/workplan/operations/part_groups.hpp"

namespace rodwright {
namespace {

constexpr double foot = 304.8;  // mm
constexpr std::string_view finish_mark = "{finish}";
constexpr std::string_view glue_up_name = "glue_up";

// A kind's own axis.
Axis size_axis(Each each) {
    if (each == Each::length) return Axis::wide;
    return each == Each::width ? Axis::deep : Axis::tall;
}

// What a part is cut to, with what joints add.
Rational size_for(const Kind& kind, Each each) {
    return kind.cut(size_axis(each));
}

std::optional<Each> size_word(const std::string& word) {
    if (word == "length") return Each::length;
    if (word == "width") return Each::width;
    if (word == "thickness") return Each::thickness;
    return std::nullopt;
}

bool kept(const MachineLimit& limit) {
    return limit.kept();
}

// Staves are as wide as the machines take.
std::vector<MachineLimit> limits_for(const Piece& piece, const GeneralOperation& general,
                                     const Machine& machine, PartId part) {
    if (general.applies == AppliesTo::staves) return {};
    return limits_of(piece, machine, part, general.each == Each::length);
}

// The first machine of the list that the shop has and that takes the part; empty: by hand.
std::string machine_for(const Piece& piece, const GeneralOperation& general, PartId part, const Shop& shop) {
    for (const std::string& name : general.machines) {
        const Machine* machine = shop.machine(name);
        if (machine != nullptr && std::ranges::all_of(limits_for(piece, general, *machine, part), kept))
            return name;
    }
    return "";
}

double surface(const Kind& kind) {
    const double l = kind.size[Axis::wide].get_d();
    const double w = kind.size[Axis::deep].get_d();
    const double t = kind.size[Axis::tall].get_d();
    return 2 * (l * w + l * t + w * t) / (foot * foot);
}

Labour labour_of(const Piece& piece, const TimeNeeded& time, const PartSet& parts) {
    double work = time.each.get_d() * static_cast<double>(parts.count());
    for (const PartId part : part_list(parts)) {
        const Kind& kind = piece[piece[part].kind];
        work += time.foot.get_d() * kind.size[Axis::wide].get_d() / foot + time.area.get_d() * surface(kind);
    }
    return {static_cast<Seconds>(time.set_up.get_d()), static_cast<Seconds>(work + 0.5), time.assumed};
}

// Work that no machine in the list takes is done as it is done without the first of them.
std::string by_hand(const GeneralOperation& general, const Shop& shop) {
    if (general.machines.empty()) return "";
    for (const OtherWay& way : shop.instead_of(general.machines.front())) {
        if (way.use == "hand") return way.text;
    }
    return "";
}

class GeneralWork {
  public:
    GeneralWork(const Piece& piece, const WorkData& data, const std::vector<GlueUp>& glue_ups)
        : piece_(piece), data_(data), glue_ups_(glue_ups) {}

    std::vector<WorkItem> collect() {
        for (const GeneralOperation& general : data_.operations.operations) {
            if (general.name == glue_up_name) {
                add_glue_ups(general);
            } else if (general.each == Each::coat) {
                add_coats(general);
            } else {
                add_groups(general);
            }
        }
        return std::move(items_);
    }

  private:
    WorkItem item_for(const GeneralOperation& general, PartSet parts) const {
        WorkItem item;
        Operation& operation = item.operation;
        operation.stage = general.stage;
        operation.name = general.name;
        operation.text.emplace_back(general.text);
        operation.test_piece = general.test_piece;
        operation.caution = general.caution;
        operation.times = parts.count();
        operation.labour = labour_of(piece_, general.time, parts);
        item.waits[static_cast<std::size_t>(WaitFor::clamp)] = whole(data_.curing.glue.clamp);
        item.waits[static_cast<std::size_t>(WaitFor::cure)] = whole(data_.curing.glue.cure);
        item.parts = std::move(parts);
        return item;
    }

    static Seconds whole(const Rational& seconds) { return static_cast<Seconds>(seconds.get_d()); }

    // One item for each size and machine, the largest first.
    void add_groups(const GeneralOperation& general) {
        // The size with its sign turned, so that the largest comes first; the machine by its place in the
        // list, past its end: by hand.
        using Group = std::pair<Rational, std::size_t>;
        std::map<Group, PartSet> groups;
        for (const PartId part : part_list(parts_for(piece_, general.applies))) {
            const Kind& kind = piece_[piece_[part].kind];
            const std::string machine = machine_for(piece_, general, part, data_.shop);
            const auto place = std::ranges::find(general.machines, machine) - general.machines.begin();
            const Rational size = general.each == Each::together ? Rational(0) : size_for(kind, general.each);
            const Group group(-size, static_cast<std::size_t>(place));
            groups.try_emplace(group, piece_.parts.size()).first->second.set(static_cast<std::size_t>(part));
        }
        for (auto& [group, parts] : groups) add_group(general, group.second, std::move(parts));
    }

    void add_group(const GeneralOperation& general, std::size_t machine, PartSet parts) {
        const Kind& any = piece_[piece_[static_cast<PartId>(parts.find_first())].kind];
        WorkItem item = item_for(general, std::move(parts));
        if (machine < general.machines.size()) {
            item.operation.machine = general.machines[machine];
            for (const PartId part : part_list(item.parts)) {
                std::ranges::move(
                    limits_for(piece_, general, *data_.shop.machine(item.operation.machine), part),
                    std::back_inserter(item.limits));
            }
            for (const auto& [name, word] : general.settings) {
                const std::optional<Each> size = size_word(word);
                Phrase value(word);
                if (size) value.words = {Quantity::length(size_for(any, *size))};
                item.operation.settings.push_back({name, std::move(value), {}});
            }
        } else if (const std::string way = by_hand(general, data_.shop); !way.empty()) {
            item.operation.text.emplace_back("No machine here takes these parts: " + way);
        }
        for (const Axis axis : general.brings) note_over(item, axis);
        if (general.applies == AppliesTo::taken) add_taken(item);
        if (!piece_.finishes.empty()) {
            fill_finish(item, plain_words(piece_.finishes.front().name));
            set_drying(item, piece_.finishes.front());
        }
        items_.push_back(std::move(item));
    }

    // Whoever reads the setting and not the cut list has to know that it is not the drawing's.
    void note_over(WorkItem& item, Axis axis) const {
        for (const WorkedKind& worked : kinds_of(piece_, item.parts)) {
            const Kind& kind = piece_[worked.kind];
            const std::optional<Rational>& over = kind.taken_over[static_cast<std::size_t>(axis)];
            if (!over) continue;
            Phrase line(capitalised(plain_words(kind.name)) + ": " + std::string(size_name(axis)) + " ");
            line << Quantity::length(*over) << " over the drawing; marked from the work later.";
            item.operation.text.push_back(std::move(line));
        }
    }

    // Which sizes, and what is there to cut away; joints of these parts are no reason to wait for others.
    void add_taken(WorkItem& item) const {
        for (const WorkedKind& worked : kinds_of(piece_, item.parts)) {
            const Kind& kind = piece_[worked.kind];
            Phrase line(capitalised(plain_words(kind.name)));
            for (const Axis axis : all_axes) {
                const std::optional<Rational>& over = kind.taken_over[static_cast<std::size_t>(axis)];
                if (!over) continue;
                line << (line.words.size() == 1 ? ": " : "; ") + std::string(size_name(axis)) + ", ";
                line << Quantity::length(*over) << " over";
            }
            item.operation.text.push_back(std::move(line << "."));
        }
        for (std::size_t i = 0; i < piece_.joints.size(); ++i) {
            const Joint& joint = piece_.joints[i];
            const auto taken = [&](const JointMember& member) {
                return item.parts.test(static_cast<std::size_t>(member.part));
            };
            if (std::ranges::any_of(joint.members, taken))
                item.uses.insert(static_cast<std::size_t>(joint.kind));
        }
    }

    static void fill_finish(WorkItem& item, const std::string& words) {
        auto& text = std::get<std::string>(item.operation.text.front().words.front());
        const std::size_t mark = text.find(finish_mark);
        if (mark != std::string::npos) text.replace(mark, finish_mark.size(), words);
    }

    void set_drying(WorkItem& item, const Finish& finish) const {
        const Drying& drying = data_.curing.finish(finish.name);
        item.waits[static_cast<std::size_t>(WaitFor::recoat)] = whole(drying.recoat);
        item.waits[static_cast<std::size_t>(WaitFor::cured)] = whole(drying.cure);
    }

    void add_coats(const GeneralOperation& general) {
        const PartSet parts = parts_for(piece_, general.applies);
        if (parts.none()) return;
        for (const Finish& finish : piece_.finishes) {
            for (int coat = 1; coat <= finish.coats; ++coat) {
                WorkItem item = item_for(general, parts);
                const std::string which = finish.coats > 1 ? ", coat " + std::to_string(coat) + " of " +
                                                                 std::to_string(finish.coats)
                                                           : "";
                fill_finish(item, plain_words(finish.name) + which);
                set_drying(item, finish);
                item.operation.wait = item.waits[static_cast<std::size_t>(WaitFor::recoat)];
                items_.push_back(std::move(item));
            }
        }
    }

    void add_glue_ups(const GeneralOperation& general) {
        for (std::size_t i = 0; i < glue_ups_.size(); ++i) {
            const GlueUp& glue_up = glue_ups_[i];
            PartSet parts(piece_.parts.size());
            for (const PartId part : glue_up.parts) parts.set(static_cast<std::size_t>(part));
            WorkItem item = item_for(general, std::move(parts));
            Operation& operation = item.operation;
            operation.glue_up = i;
            operation.times = glue_up.joints;
            operation.labour.work =
                static_cast<Seconds>(general.time.each.get_d() * static_cast<double>(glue_up.joints) + 0.5);
            add_closing(item, glue_up);
            items_.push_back(std::move(item));
        }
    }

    // What the joints' definitions say of gluing and closing: it comes after the same work there.
    void add_closing(WorkItem& item, const GlueUp& glue_up) const {
        std::set<JointKindId> kinds;
        for (const BringIn& motion : glue_up.motions) {
            for (const JointId joint : motion.glued) kinds.insert(piece_[joint].kind);
            for (const JointId joint : motion.dry) kinds.insert(piece_[joint].kind);
        }
        for (const JointKindId id : kinds) {
            item.uses.insert(static_cast<std::size_t>(id));
            const Work& work = piece_[id].work;
            for (const StepTemplate& step : work.steps) {
                if (!closes_joint(step.name)) continue;
                for (const StepAfter& after : step.after)
                    item.after.push_back({work.definition, after.step, after.because});
            }
        }
    }

    const Piece& piece_;
    const WorkData& data_;
    const std::vector<GlueUp>& glue_ups_;
    std::vector<WorkItem> items_;
};

}  // namespace

std::vector<WorkItem> general_work(const Piece& piece, const WorkData& data,
                                   const std::vector<GlueUp>& glue_ups) {
    return GeneralWork(piece, data, glue_ups).collect();
}

}  // namespace rodwright
