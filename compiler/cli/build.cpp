#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <iterator>
#include <memory>

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/at_once.hpp"
#include "compiler/check/run_checks.hpp"
#include "compiler/cli/backend_options.hpp"
#include "compiler/cli/command.hpp"
#include "compiler/cli/design_arguments.hpp"
#include "compiler/cli/progress.hpp"
#include "compiler/cli/wood_arguments.hpp"
#include "compiler/cli/work_arguments.hpp"
#include "compiler/plugin/load_backend.hpp"
#include "compiler/revision.hpp"

namespace rodwright {

namespace {

namespace fs = std::filesystem;

struct BuildArguments {
    DesignArguments design;
    WoodArguments wood;
    WorkArguments work;
    std::string folder;             // empty: out/NAME
    std::vector<std::string> only;  // names of backends; empty: all
    std::vector<std::string> plugins;
    Backends backends;
    BackendOptions options;
    Diagnostics loading;
};

struct Task {
    const Backend* backend;
    OptionValues options;
};

// Options come from backends, so modules named on the command line are loaded before it is read.
std::vector<fs::path> plugin_paths(const std::vector<std::string>& words) {
    constexpr std::string_view option = "--plugin";
    std::vector<fs::path> paths;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == option && i + 1 < words.size()) paths.emplace_back(words[i + 1]);
        if (words[i].starts_with("--plugin=")) paths.emplace_back(words[i].substr(option.size() + 1));
    }
    return paths;
}

Diagnostic unknown_backend(const std::string& name, const Backends& backends) {
    std::vector<std::string> names;
    for (const auto& backend : backends) names.push_back(backend->name());
    const std::string near = nearest_name(name, std::move(names));
    return diagnose(Code::bad_command, {}, fmt::format("there is no backend `{}`", name))
        .hint(near.empty() ? "`rodwright list backends` prints all"
                           : fmt::format("`{}` is the nearest", near));
}

void check_names(const BuildArguments& arguments, Diagnostics& diagnostics) {
    for (const std::string& name : arguments.only) {
        const auto is_named = [&](const auto& backend) { return backend->name() == name; };
        if (std::any_of(arguments.backends.begin(), arguments.backends.end(), is_named)) continue;
        diagnostics.add(unknown_backend(name, arguments.backends));
    }
}

std::vector<Task> plan(const BuildArguments& arguments, Diagnostics& diagnostics) {
    check_names(arguments, diagnostics);
    const auto& only = arguments.only;
    std::vector<Task> tasks;
    for (const auto& backend : arguments.backends) {
        const bool wanted =
            only.empty() || std::find(only.begin(), only.end(), backend->name()) != only.end();
        if (!wanted) continue;
        auto values = arguments.options.values_for(*backend, diagnostics);
        if (values) tasks.push_back({backend.get(), std::move(*values)});
    }
    return tasks;
}

// Backends read no files: where a revision is to come from version control, it is looked up for them.
void look_up_revision(std::vector<Task>& tasks, const std::string& design, Diagnostics& diagnostics) {
    const auto asked = [](const Task& task) {
        const auto revision = task.options.find("revision");
        return revision != task.options.end() && revision->second == "git";
    };
    if (std::none_of(tasks.begin(), tasks.end(), asked)) return;
    const Revision found = committed_revision(fs::absolute(design).parent_path(), DiskWorld());
    if (!found.error.empty()) {
        diagnostics.add(diagnose(Code::bad_command, {}, "`--revision git` finds no revision: " + found.error)
                            .hint("write it: --revision B"));
    }
    for (Task& task : tasks) {
        if (asked(task)) task.options["revision"] = found.name;
    }
}

// What backends may know of the environment, so that they need not look.
std::vector<std::pair<std::string, std::string>> environment() {
    constexpr const char* date = "SOURCE_DATE_EPOCH";  // reproducible-builds.org
    const char* value = std::getenv(date);
    if (value == nullptr) return {};
    return {{date, value}};
}

fs::path output_folder(const BuildArguments& arguments) {
    if (!arguments.folder.empty()) return arguments.folder;
    return fs::path("out") / fs::path(arguments.design.file).stem();
}

bool any_needs(const std::vector<Task>& tasks, bool (Backend::*needs)() const) {
    return std::any_of(tasks.begin(), tasks.end(),
                       [&](const Task& task) { return (task.backend->*needs)(); });
}

struct Prepared {
    std::optional<PlannedDesign> wood;
    std::optional<Findings> findings;
    std::optional<WorkPlan> work;
};

// What several backends work from is made once, before them: the wood is planned while the solids are built
// and checked, and the work is planned from them. What is found is judged with what the compiler said.
Prepared prepare(const std::vector<Task>& tasks, const BuildArguments& arguments, Compilation& compilation,
                 SolidStore& solids) {
    const Progress progress("planning");
    Prepared prepared;
    Diagnostics of_wood;
    Diagnostics of_work;
    std::vector<std::function<void()>> works;
    if (any_needs(tasks, &Backend::needs_wood_plan)) {
        works.emplace_back([&] {
            prepared.wood = plan_design(arguments.design, arguments.wood, *compilation.piece,
                                        *compilation.sources, of_wood);
        });
    }
    std::optional<WorkSetting> setting;
    if (any_needs(tasks, &Backend::needs_work_plan))
        setting = work_setting(arguments.design, arguments.work, *compilation.sources, of_work);
    const bool checked = any_needs(tasks, &Backend::needs_findings);
    if (setting || checked || any_needs(tasks, &Backend::needs_solids)) {
        works.emplace_back([&] {
            const Piece& piece = *compilation.piece;
            solids.placed();
            if (!compilation.diagnostics.ok() || !(checked || setting)) return;
            const std::optional<AssemblyFacts> facts = assembly_facts(piece, solids);
            at_once(2, [&](std::size_t which) {
                if (which == 0 && checked) prepared.findings = run_checks(piece, solids, facts);
                if (which == 1 && setting)
                    prepared.work = plan_work(piece, setting->data, facts, setting->options, of_work);
            });
        });
    }
    at_once(works.size(), [&](std::size_t i) { works[i](); });
    for (const Diagnostics* found : {&of_wood, &of_work}) {
        for (const Diagnostic& diagnostic : found->list()) compilation.diagnostics.add(diagnostic);
    }
    if (prepared.findings) {
        if (prepared.work)
            std::ranges::copy(prepared.work->numbers, std::back_inserter(prepared.findings->numbers));
        prepared.findings =
            judged(std::move(*prepared.findings), compilation.diagnostics, *compilation.piece);
        compilation.diagnostics = prepared.findings->diagnostics;
    }
    return prepared;
}

void run_tasks(const std::vector<Task>& tasks, const BuildArguments& arguments, Compilation& compilation,
               OutputFolder& out) {
    SolidStore solids(*compilation.piece, compilation.diagnostics);
    const Prepared prepared = prepare(tasks, arguments, compilation, solids);
    if (!compilation.diagnostics.ok()) return;
    const BackendInput input{*compilation.piece,
                             *compilation.sources,
                             solids,
                             environment(),
                             prepared.wood ? &prepared.wood->plan : nullptr,
                             prepared.findings ? &*prepared.findings : nullptr,
                             prepared.work ? &*prepared.work : nullptr};
    for (const Task& task : tasks) {
        const Progress progress("making " + task.backend->name());
        task.backend->emit(input, task.options, out, compilation.diagnostics);
    }
}

void write_all(const std::vector<Task>& tasks, const BuildArguments& arguments, Compilation& compilation,
               const Console& console) {
    const fs::path folder = output_folder(arguments);
    OutputFolder out(folder);
    run_tasks(tasks, arguments, compilation, out);
    if (!compilation.diagnostics.ok() || !out.commit(compilation.diagnostics)) return;
    for (const auto& [name, bytes] : out.files()) console.print((folder / name).string() + '\n');
}

ExitStatus build(const Console& console, const BuildArguments& arguments) {
    Diagnostics diagnostics = arguments.loading;
    std::vector<Task> tasks = plan(arguments, diagnostics);
    look_up_revision(tasks, arguments.design.file, diagnostics);
    if (!diagnostics.ok()) return console.report(diagnostics, {});
    auto compilation = compile_design(arguments.design, diagnostics);
    if (!compilation) return console.report(diagnostics, {});
    for (const Diagnostic& warning : diagnostics.list()) compilation->diagnostics.add(warning);
    if (compilation->piece) write_all(tasks, arguments, *compilation, console);
    return console.report(compilation->diagnostics, *compilation->sources);
}

}  // namespace

void add_build(CLI::App& program, Session& session) {
    CLI::App* command =
        add_command(program, "build", "Make cut list, steps, drawings and the rest from a design");
    const auto& words = session.words;
    // Another command has no use for backends, and should not wait for them.
    if (std::find(words.begin(), words.end(), "build") == words.end()) return;
    auto arguments = std::make_shared<BuildArguments>();
    arguments->backends = all_backends(plugin_paths(words), backend_folder(), arguments->loading);
    add_design_arguments(*command, arguments->design);
    add_wood_options(*command, arguments->wood);
    add_work_options(*command, arguments->work);
    command->add_option("--out", arguments->folder, "Where to write (out/ and the file's name)")
        ->type_name("FOLDER");
    command
        ->add_option("--only", arguments->only,
                     "Only these backends, with commas between; see `list backends`")
        ->type_name("NAME,...")
        ->delimiter(',')
        ->allow_extra_args(false);
    command->add_option("--plugin", arguments->plugins, "Load a backend from this module; may be repeated")
        ->type_name("PATH")
        ->allow_extra_args(false);
    arguments->options.add_to(*command, arguments->backends);
    command->callback([&session, arguments] {
        session.run = [&session, arguments] { return build(session.console, *arguments); };
    });
}

}  // namespace rodwright
