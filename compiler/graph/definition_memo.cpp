#include "compiler/graph/definition_memo.hpp"

#include <algorithm>

namespace rodwright {

namespace {

// Uses remembered for one call: looking through more costs as much as evaluating.
constexpr std::size_t most_uses = 8;

bool same_member(const MemberView& a, const MemberView& b) {
    return a.form == b.form && a.part == b.part && a.role == b.role;
}

}  // namespace

bool DefinitionMemo::same(const Use& use, const DefinitionCall& call,
                          const std::vector<GivenArgument>& arguments) {
    const auto as_read = [&](const SizeRead& read) {
        return call.members[read.member].sizes[read.size].second == read.value;
    };
    return std::ranges::equal(use.members, call.members, same_member) &&
           std::ranges::all_of(use.reads, as_read) &&
           std::ranges::equal(use.arguments, arguments, {}, &GivenArgument::value, &GivenArgument::value);
}

DefinitionMemo::Result DefinitionMemo::find(const DefinitionCall& call,
                                            const std::vector<GivenArgument>& arguments) const {
    const auto found = uses_.find({call.call.tree->file(), call.call.node});
    if (found == uses_.end()) return nullptr;
    const auto use =
        std::ranges::find_if(found->second, [&](const Use& each) { return same(each, call, arguments); });
    return use == found->second.end() ? nullptr : use->result;
}

void DefinitionMemo::keep(const DefinitionCall& call, std::vector<GivenArgument> arguments,
                          std::vector<SizeRead> reads, Result result) {
    std::vector<Use>& uses = uses_[{call.call.tree->file(), call.call.node}];
    if (uses.size() == most_uses) uses.erase(uses.begin());
    std::vector<MemberView> members = call.members;
    for (MemberView& member : members) member.sizes.clear();
    uses.push_back({std::move(members), std::move(arguments), std::move(reads), std::move(result)});
}

}  // namespace rodwright
