// Whether a text is well-formed XML, as far as our writers go: no comments, no declarations, no CDATA.
#pragma once

#include <string>

namespace rodwright::testing {

// The first fault in words; empty if there is none.
std::string xml_fault(const std::string& text);

}  // namespace rodwright::testing
