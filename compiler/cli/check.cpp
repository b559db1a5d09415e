#include <algorithm>
#include <iterator>
#include <memory>
#include <set>

#include "backends/graph/graph_backend.hpp"
#include "backends/svg/locked_picture.hpp"
#include "compiler/assembly/locks.hpp"
#include "compiler/check/report.hpp"
#include "compiler/check/run_checks.hpp"
#include "compiler/cli/command.hpp"
#include "compiler/cli/design_arguments.hpp"
#include "compiler/cli/work_arguments.hpp"
#include "compiler/world.hpp"
#include "grammar/parse.hpp"
#include "grammar/print.hpp"

namespace rodwright {

namespace {

struct CheckArguments {
    DesignArguments design;
    std::string dump;
    std::string picture;  // where to; empty: none
    bool numbers = false;
    bool json = false;
    bool strict = false;
};

// What is wrong with the text is said by the check itself.
void dump_tree(const Console& console, const std::string& path) {
    ReadResult read = DiskWorld().read(path);
    if (!read.text) return;
    SourceManager sources;
    Diagnostics unseen;
    console.print(dump(parse(sources, sources.add(path, std::move(*read.text)), unseen)));
}

// What is only to be looked at becomes what has to be put right.
Diagnostics strict(const Diagnostics& found) {
    Diagnostics judged;
    for (Diagnostic diagnostic : found.list()) {
        if (diagnostic.severity == Severity::warning) diagnostic.severity = Severity::error;
        judged.add(std::move(diagnostic));
    }
    return judged;
}

// What the shop lacks for the work, what its machines do not take, and work that waits for itself.
void check_work(const CheckArguments& arguments, Compilation& compilation,
                const std::optional<AssemblyFacts>& facts, Findings& findings) {
    Diagnostics found;
    const std::optional<WorkSetting> setting =
        work_setting(arguments.design, {}, *compilation.sources, found);
    const Piece& piece = *compilation.piece;
    const std::optional<WorkPlan> plan =
        setting ? plan_work(piece, setting->data, facts, setting->options, found) : std::nullopt;
    if (plan) std::ranges::copy(plan->numbers, std::back_inserter(findings.numbers));
    for (const Diagnostic& diagnostic : found.list()) compilation.diagnostics.add(diagnostic);
}

// Draws the parts that lock each other, if there are any.
void draw_locks(const std::string& path, const Compilation& compilation, SolidStore& solids,
                const AssemblyFacts& facts, Diagnostics& diagnostics) {
    std::set<PartId> locked;
    for (const PartNumbers& lock : locks_of(facts, shared_wood(facts.surfaces, solids))) {
        for (const std::size_t part : lock) locked.insert(static_cast<PartId>(part));
    }
    if (locked.empty()) return;
    const BackendInput input{*compilation.piece, *compilation.sources, solids, {}};
    const std::optional<std::string> drawn =
        locked_picture(input, {locked.begin(), locked.end()}, diagnostics);
    if (drawn) replace_file(path, *drawn, diagnostics);
}

Findings findings_of(const CheckArguments& arguments, Compilation& compilation) {
    Findings findings;
    if (compilation.piece && compilation.diagnostics.ok()) {
        SolidStore solids(*compilation.piece, compilation.diagnostics);
        solids.placed();
        if (compilation.diagnostics.ok()) {
            const std::optional<AssemblyFacts> facts = assembly_facts(*compilation.piece, solids);
            findings = run_checks(*compilation.piece, solids, facts);
            check_work(arguments, compilation, facts, findings);
            if (facts && !arguments.picture.empty())
                draw_locks(arguments.picture, compilation, solids, *facts, compilation.diagnostics);
        }
    }
    if (compilation.piece) {
        findings = judged(std::move(findings), compilation.diagnostics, *compilation.piece);
    } else {
        findings.diagnostics = compilation.diagnostics;
    }
    if (arguments.strict) findings.diagnostics = strict(findings.diagnostics);
    return findings;
}

ExitStatus check(const Console& console, const CheckArguments& arguments) {
    Diagnostics diagnostics;
    auto compilation = compile_design(arguments.design, diagnostics);
    if (!compilation) return console.report(diagnostics, {});
    if (arguments.dump == "tree") dump_tree(console, arguments.design.file);
    const Findings findings = findings_of(arguments, *compilation);
    const LengthStyle style = compilation->piece ? compilation->piece->style : LengthStyle();
    if (arguments.dump == "graph" && compilation->piece) console.print(piece_yaml(*compilation->piece));
    if (arguments.numbers) console.print(numbers_text(findings.numbers, style));
    if (!arguments.json) return console.report(findings.diagnostics, *compilation->sources);
    console.print(findings_json(findings, *compilation->sources, style));
    return exit_status(findings.diagnostics);
}

}  // namespace

void add_check(CLI::App& program, Session& session) {
    CLI::App* command = add_command(
        program, "check", "Read and place a design, check whether it fits, moves, goes together and stands");
    auto arguments = std::make_shared<CheckArguments>();
    add_design_arguments(*command, arguments->design);
    command->add_option("--dump", arguments->dump, "Print what a phase makes of the design")
        ->type_name("tree|graph")
        ->check(one_of({"tree", "graph"}));
    command
        ->add_option("--picture", arguments->picture,
                     "Draw parts that lock each other (E1002) into this SVG, if there are any")
        ->type_name("FILE");
    command->add_flag("--numbers", arguments->numbers, "Print what the checks worked out, and how");
    command->add_flag("--json", arguments->json, "Print findings and numbers as one JSON object");
    command->add_flag("--strict", arguments->strict, "Warnings that the design does not accept are errors");
    command->callback([&session, arguments] {
        session.run = [&session, arguments] { return check(session.console, *arguments); };
    });
}

}  // namespace rodwright
