#include <memory>

#include "backends/graph/graph_backend.hpp"
#include "compiler/assembly/check_assembly.hpp"
#include "compiler/cli/command.hpp"
#include "compiler/cli/design_arguments.hpp"
#include "compiler/world.hpp"
#include "grammar/parse.hpp"
#include "grammar/print.hpp"

namespace rodwright {

namespace {

struct CheckArguments {
    DesignArguments design;
    std::string dump;
};

// What is wrong with the text is said by the check itself.
void dump_tree(const Console& console, const std::string& path) {
    ReadResult read = DiskWorld().read(path);
    if (!read.text) return;
    SourceManager sources;
    Diagnostics unseen;
    console.print(dump(parse(sources, sources.add(path, std::move(*read.text)), unseen)));
}

ExitStatus check(const Console& console, const CheckArguments& arguments) {
    Diagnostics diagnostics;
    auto compilation = compile_design(arguments.design, diagnostics);
    if (!compilation) return console.report(diagnostics, {});
    if (arguments.dump == "tree") dump_tree(console, arguments.design.file);
    if (compilation->piece && compilation->diagnostics.ok()) {
        SolidStore solids(*compilation->piece, compilation->diagnostics);
        check_assembly(*compilation->piece, solids, compilation->diagnostics);
    }
    if (arguments.dump == "graph" && compilation->piece) console.print(piece_yaml(*compilation->piece));
    return console.report(compilation->diagnostics, *compilation->sources);
}

}  // namespace

void add_check(CLI::App& program, Session& session) {
    CLI::App* command = add_command(
        program, "check",
        "Read and place a design, try whether it goes together, say what is wrong, write nothing");
    auto arguments = std::make_shared<CheckArguments>();
    add_design_arguments(*command, arguments->design);
    command->add_option("--dump", arguments->dump, "Print what a phase makes of the design")
        ->type_name("tree|graph")
        ->check(one_of({"tree", "graph"}));
    command->callback([&session, arguments] {
        session.run = [&session, arguments] { return check(session.console, *arguments); };
    });
}

}  // namespace rodwright
