#include "compiler/workplan/operations/notes.hpp"

#include <algorithm>
#include <set>

namespace rodwright {
namespace {

bool mirrored_pair(const Piece& piece, const Operation& operation) {
    return std::ranges::any_of(operation.kinds, [&](const WorkedKind& each) {
        const std::optional<KindId> other = piece[each.kind].mirror_of;
        return other &&
               std::ranges::find(operation.kinds, *other, &WorkedKind::kind) != operation.kinds.end();
    });
}

bool wanted(NoteWhen when, const Piece& piece, const Operation& operation) {
    const bool at_setting =
        !operation.machine.empty() && !operation.settings.empty() && !operation.work.empty();
    switch (when) {
        case NoteWhen::mirrored:
            return at_setting && mirrored_pair(piece, operation);
        case NoteWhen::batch:
            return at_setting && operation.times > 2;
        case NoteWhen::test_piece:
            return operation.test_piece;
        case NoteWhen::mates:
            return operation.stage == Stage::lay_out && !operation.work.empty() && operation.parts.size() > 1;
    }
    return false;
}

}  // namespace

void add_notes(const Piece& piece, const std::vector<WorkNote>& notes, std::vector<Operation>& operations) {
    std::set<const WorkNote*> told;
    for (Operation& operation : operations) {
        for (const WorkNote& note : notes) {
            if (!wanted(note.when, piece, operation)) continue;
            const bool is_new = told.insert(&note).second;
            if (is_new || note.when == NoteWhen::test_piece) operation.text.emplace_back(note.text);
        }
    }
}

}  // namespace rodwright
