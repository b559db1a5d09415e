#include <fmt/format.h>

#include <algorithm>

#include "compiler/place/report.hpp"

namespace rodwright {

namespace {

constexpr std::size_t most_labels = 6;

bool overlaps(Span a, Span b) {
    return a.file == b.file && a.begin < b.end && b.begin < a.end;
}

void add_label(Diagnostic& diagnostic, Span where, std::size_t& left_out) {
    if (overlaps(where, diagnostic.primary)) return;
    for (const Label& label : diagnostic.labels) {
        if (label.span == where) return;
    }
    if (diagnostic.labels.size() < most_labels) {
        diagnostic.labels.push_back({where, "with this line"});
    } else {
        ++left_out;
    }
}

Diagnostic conflict_diagnostic(const Statements& statements, const Conflict& conflict) {
    const Equation& equation = statements.equations[conflict.equation];
    const std::string amount = format_small(abs(conflict.residual), statements.style);
    Diagnostic diagnostic =
        diagnose(Code::lines_disagree, equation.where, fmt::format("lines disagree by {}", amount));
    diagnostic.primary_text = fmt::format("by the other lines, the left side is {} {} than the right", amount,
                                          conflict.residual > 0 ? "more" : "less");
    std::size_t left_out = 0;
    for (const std::size_t other : conflict.involved) {
        if (other != conflict.equation) add_label(diagnostic, statements.equations[other].where, left_out);
    }
    if (left_out > 0) diagnostic.notes.push_back(fmt::format("and {} more lines", left_out));
    diagnostic.help = diagnostic.labels.empty() ? "this line contradicts itself: change one of its sizes"
                                                : "take one of these lines out, or change a size in it";
    return diagnostic;
}

}  // namespace

void report_conflicts(const Statements& statements, const LinearSolution& solution,
                      Diagnostics& diagnostics) {
    for (const Conflict& conflict : solution.conflicts)
        diagnostics.add(conflict_diagnostic(statements, conflict));
}

}  // namespace rodwright
