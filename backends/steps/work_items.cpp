#include "backends/steps/work_items.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "backends/words.hpp"

namespace rodwright {
namespace {

// Adds work, or its parts to work that is the same already.
class Collector {
  public:
    void add(WorkItem item) {
        const auto [place, is_new] = by_text_.try_emplace(key(item), items_.size());
        if (is_new) {
            items_.push_back(std::move(item));
        } else {
            join(items_[place->second], item);
        }
    }
    std::vector<WorkItem> take() {
        for (WorkItem& item : items_) item.step.text = text_of(item);
        return std::move(items_);
    }

  private:
    static std::string key(const WorkItem& item) {
        const Step& step = item.step;
        std::vector<std::string> words = {step.work,    step.name,    item.member,
                                          item.pattern, step.machine, step.caution};
        for (const auto& [name, value] : step.settings) words.insert(words.end(), {name, value});
        return joined(words, std::string_view("\0", 1));
    }

    template <typename Value>
    static void add_new(std::vector<Value>& values, const std::vector<Value>& more) {
        for (const Value& value : more) {
            if (std::ranges::find(values, value) == values.end()) values.push_back(value);
        }
    }

    static void join(WorkItem& item, WorkItem& other) {
        item.parts.merge(other.parts);
        item.uses.merge(other.uses);
        add_new(item.after, other.after);
        for (const auto& [role, names] : other.named) add_new(item.named[role], names);
    }

    // The pattern with every part that it is about: `Try rail or stretcher in leg dry.`
    static std::string text_of(const WorkItem& item) {
        std::string text = item.pattern;
        for (const auto& [role, names] : item.named) {
            const std::string mark = fmt::format("{{{}}}", role);
            const std::string parts = one_of(names);
            for (std::size_t at = text.find(mark); at != std::string::npos;
                 at = text.find(mark, at + parts.size())) {
                text.replace(at, mark.size(), parts);
            }
        }
        return text;
    }

    std::vector<WorkItem> items_;
    std::map<std::string, std::size_t> by_text_;
};

bool is_sheet(const Piece& piece, const Kind& kind) {
    const auto wood = std::ranges::find(piece.woods, kind.wood, &Wood::name);
    return wood != piece.woods.end() && wood->sheet;
}

void add_members(std::set<PartId>& parts, const Piece& piece, const JointKind& kind,
                 const std::string& role) {
    for (const JointId id : kind.joints) {
        for (const JointMember& member : piece[id].members) {
            if (role.empty() || member.role == role) parts.insert(member.part);
        }
    }
}

std::set<PartId> parts_of_joints(const Piece& piece, bool glued_only) {
    std::set<PartId> parts;
    for (const JointKind& kind : piece.joint_kinds) {
        if (kind.fastening || (glued_only && kind.glue.empty())) continue;
        add_members(parts, piece, kind, "");
    }
    return parts;
}

template <typename Wanted>
std::set<PartId> parts_of_kinds(const Piece& piece, Wanted wanted) {
    std::set<PartId> parts;
    for (const Kind& kind : piece.kinds) {
        if (wanted(kind)) parts.insert(kind.parts.begin(), kind.parts.end());
    }
    return parts;
}

std::set<PartId> parts_for(const Piece& piece, AppliesTo applies) {
    switch (applies) {
        case AppliesTo::all:
            return parts_of_kinds(piece, [](const Kind&) { return true; });
        case AppliesTo::solid:
            return parts_of_kinds(piece, [&](const Kind& k) { return !is_sheet(piece, k); });
        case AppliesTo::sheet:
            return parts_of_kinds(piece, [&](const Kind& k) { return is_sheet(piece, k); });
        case AppliesTo::glued:
            return parts_of_kinds(piece, [](const Kind& k) { return k.glued.has_value(); });
        case AppliesTo::joined:
            return parts_of_joints(piece, false);
        case AppliesTo::glue:
            return parts_of_joints(piece, true);
        case AppliesTo::finish:
            return parts_of_kinds(piece, [&](const Kind&) { return !piece.finishes.empty(); });
    }
    return {};
}

std::string finish_words(const Piece& piece) {
    std::vector<std::string> words;
    for (const Finish& finish : piece.finishes) {
        words.push_back(fmt::format("{}, {}", plain_words(finish.name),
                                    counted(static_cast<std::size_t>(std::max(finish.coats, 0)), "coat")));
    }
    return joined(words, "; ");
}

WorkItem general_item(const Piece& piece, const GeneralStep& general) {
    static constexpr std::string_view finish_mark = "{finish}";
    WorkItem item;
    item.step.stage = general.stage;
    item.step.name = general.name;
    item.step.text = general.text;
    item.step.caution = general.caution;
    const std::size_t mark = item.step.text.find(finish_mark);
    if (mark != std::string::npos) item.step.text.replace(mark, finish_mark.size(), finish_words(piece));
    item.pattern = item.step.text;
    item.parts = parts_for(piece, general.applies);
    return item;
}

// The stage in which a definition's step is done, by its name; what it must come after may make it later.
Stage usual_stage(const StepTemplate& step, bool of_shape) {
    if (of_shape) return Stage::shaping;
    if (step.name == "lay_out") return Stage::lay_out;
    return step.name == "glue" || step.name == "fasten" ? Stage::assembly : Stage::joinery;
}

WorkItem template_item(const Work& work, const StepTemplate& source, bool of_shape,
                       const LengthStyle& style) {
    WorkItem item;
    item.step.stage = usual_stage(source, of_shape);
    item.step.work = work.definition;
    item.step.name = source.name;
    item.pattern = read_by_role(source.text, style);
    for (const auto& [role, part] : parts_named(source.text)) item.named[role].push_back(part);
    item.step.machine = source.machine;
    for (const auto& [name, value] : source.settings)
        item.step.settings.emplace_back(name, read_out(value, style));
    item.step.test_piece = source.test_piece;
    item.step.caution = read_out(source.caution, style);
    item.member = source.member;
    for (const StepAfter& after : source.after)
        item.after.push_back({after.step, read_out(after.because, style)});
    item.where = source.where;
    return item;
}

void add_joints(Collector& items, const Piece& piece) {
    for (std::size_t i = 0; i < piece.joint_kinds.size(); ++i) {
        const JointKind& kind = piece.joint_kinds[i];
        for (const StepTemplate& source : kind.work.steps) {
            WorkItem item = template_item(kind.work, source, false, piece.style);
            item.uses.insert(i);
            add_members(item.parts, piece, kind, source.member);
            items.add(std::move(item));
        }
    }
}

void add_shapes(Collector& items, const Piece& piece) {
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        const Kind& kind = piece.kinds[i];
        for (const ShapeUse& use : kind.shapes) {
            for (const StepTemplate& source : use.work.steps) {
                WorkItem item = template_item(use.work, source, true, piece.style);
                item.uses.insert(piece.joint_kinds.size() + i);
                item.parts.insert(kind.parts.begin(), kind.parts.end());
                items.add(std::move(item));
            }
        }
    }
}

std::vector<StepPart> step_parts_of(const Piece& piece, const std::set<PartId>& parts) {
    std::map<KindId, std::size_t> counts;
    for (const PartId part : parts) ++counts[piece[part].kind];
    std::vector<StepPart> list;
    for (const auto& [kind, count] : counts)
        list.push_back({kind, piece[kind].letter, piece[kind].name, count});
    return list;
}

}  // namespace

std::vector<WorkItem> collect_work(const Piece& piece, const OrderRules& rules) {
    Collector collector;
    for (const GeneralStep& general : rules.steps) {
        WorkItem item = general_item(piece, general);
        if (!item.parts.empty()) collector.add(std::move(item));
    }
    add_joints(collector, piece);
    add_shapes(collector, piece);
    std::vector<WorkItem> items = collector.take();
    for (WorkItem& item : items) {
        item.step.parts = step_parts_of(piece, item.parts);
        item.step.all_parts = item.parts.size() == piece.parts.size();
    }
    return items;
}

}  // namespace rodwright
