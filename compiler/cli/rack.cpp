// `rodwright rack after FILE`: the rack as it will be when a design's wood has been cut.
#include <fmt/format.h>

#include <memory>

#include "compiler/cli/command.hpp"
#include "compiler/cli/wood_arguments.hpp"
#include "compiler/plugin/output_folder.hpp"
#include "compiler/stock/plan/rack_change.hpp"

namespace rodwright {
namespace {

struct RackArguments {
    DesignArguments design;
    WoodArguments wood;
    bool write = false;
};

void show_after(const PlannedDesign& planned, bool write, const Console& console, Diagnostics& diagnostics) {
    const std::string& path = *planned.files.rack;
    ReadResult read = DiskWorld().read(path);
    if (!read.text) {
        diagnostics.add(
            diagnose(Code::cannot_read, {}, fmt::format("cannot read `{}`: {}", path, read.error)));
        return;
    }
    const std::string after = rack_after(*read.text, *planned.supply.rack, change_of(planned.plan));
    if (!write) {
        console.print(after);
    } else if (replace_file(path, after, diagnostics)) {
        console.print(path + '\n');
    }
}

ExitStatus rack_after_design(const Console& console, const RackArguments& arguments) {
    Diagnostics diagnostics;
    auto compilation = compile_design(arguments.design, diagnostics);
    if (!compilation) return console.report(diagnostics, {});
    if (!compilation->piece) return console.report(compilation->diagnostics, *compilation->sources);
    const auto planned = plan_design(arguments.design, arguments.wood, *compilation->piece,
                                     *compilation->sources, compilation->diagnostics);
    Diagnostics& found = compilation->diagnostics;
    if (planned && !planned->supply.rack) {
        found.add(diagnose(Code::bad_command, {}, "there is no rack to say this of")
                      .hint("put a `rack.yaml` beside the design, or name one: --rack FILE"));
    } else if (planned && found.ok()) {
        show_after(*planned, arguments.write, console, found);
    }
    return console.report(found, *compilation->sources);
}

}  // namespace

void add_rack(CLI::App& program, Session& session) {
    CLI::App* rack = add_command(program, "rack", "What cutting a design's wood does to the rack");
    rack->require_subcommand(1);
    CLI::App* command =
        add_command(*rack, "after", "Print the rack file as it will be when the design is cut");
    auto arguments = std::make_shared<RackArguments>();
    add_design_arguments(*command, arguments->design);
    add_wood_options(*command, arguments->wood);
    command->add_flag("--write", arguments->write, "Write it into the rack file in place of printing it");
    command->callback([&session, arguments] {
        session.run = [&session, arguments] { return rack_after_design(session.console, *arguments); };
    });
}

}  // namespace rodwright
