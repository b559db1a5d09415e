// What the rules read from: PEGTL's input, and the little that the rules know about where they are.
#pragma once

#include <string_view>
#include <tao/pegtl.hpp>

namespace rodwright::rules {

// Thrown where something is missing; caught at the end of the statement it is in.
struct Unreadable {
    const char* stopped;  // the end of the last token that was read
};

struct Input : tao::pegtl::memory_input<tao::pegtl::tracking_mode::lazy> {
    using memory_input::memory_input;

    std::string_view rest() const { return {current(), size()}; }

    unsigned brackets = 0;              // how many ( and [ are open: within them a line end is a blank
    const char* token_begin = begin();  // the last token read
    const char* token_end = begin();
    const char* statement = begin();  // where the innermost statement begins
    const char* stopped = begin();    // of the last Unreadable
};

}  // namespace rodwright::rules
