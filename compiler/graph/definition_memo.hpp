// Uses of definitions, so that alike ones are evaluated once. Private to compiler/graph/.
//
// A row of slats has hundreds of joints that differ only in where they stand. What a definition makes depends
// on its arguments, the names and forms of its members, and those of their sizes that it reads; which sizes
// it reads depends on nothing else. So a use in which all of these are the same comes out the same.
#pragma once

#include <map>
#include <memory>
#include <utility>
#include <vector>

#include "compiler/graph/definition_use.hpp"

namespace rodwright {

class DefinitionMemo {
  public:
    using Result = std::shared_ptr<const DefinitionResult>;

    // Null if there was no such use.
    Result find(const DefinitionCall& call, const std::vector<GivenArgument>& arguments) const;
    void keep(const DefinitionCall& call, std::vector<GivenArgument> arguments, std::vector<SizeRead> reads,
              Result result);

  private:
    struct Use {
        std::vector<MemberView> members;  // without sizes
        std::vector<GivenArgument> arguments;
        std::vector<SizeRead> reads;
        Result result;
    };
    using Place = std::pair<FileId, NodeId>;  // of the call

    std::map<Place, std::vector<Use>> uses_;

    static bool same(const Use& use, const DefinitionCall& call, const std::vector<GivenArgument>& arguments);
};

}  // namespace rodwright
