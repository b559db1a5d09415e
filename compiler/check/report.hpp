// Findings and numbers for programs, and numbers for a terminal.
#pragma once

#include <string>

#include "compiler/check/findings.hpp"
#include "compiler/quantity/format.hpp"

namespace rodwright {

// One JSON object (RFC 8259): `findings`, worst first, each as render_json() writes it; `numbers`, each with
// check, title, value, limit, formula, inputs, source, assumptions. A value has the text that a person reads
// (`shown`), the number in its base unit (`number`) and that unit.
std::string findings_json(const Findings& findings, const SourceManager& sources, const LengthStyle& style);

// A line for each with its value and limit, and below it how it was found.
std::string numbers_text(const std::vector<Number>& numbers, const LengthStyle& style);

}  // namespace rodwright
