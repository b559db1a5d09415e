#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "compiler/check/check_table.hpp"
#include "compiler/cli/command.hpp"
#include "compiler/cli/definition_text.hpp"
#include "compiler/cli/design_arguments.hpp"
#include "compiler/data/woods.hpp"
#include "compiler/evaluate/design.hpp"
#include "compiler/plugin/load_backend.hpp"
#include "grammar/parse.hpp"

namespace rodwright {

namespace {

// One thing that can be listed: a line among others, or all there is to say of it.
struct Entry {
    std::string name;
    std::string summary;
    std::string details;
};
using Entries = std::vector<Entry>;

// Where entries are read from, and what is wrong there.
struct Reading {
    const LibraryFiles& library;
    SourceManager sources = {};
    Diagnostics diagnostics = {};

    // Empty, and reported, if the library has no such file.
    std::optional<FileId> add(const std::string& path) {
        ReadResult read = library.read(path);
        if (read.text) return sources.add(library.shown(path), std::move(*read.text), true);
        diagnostics.add(diagnose(Code::cannot_read, {},
                                 fmt::format("cannot read `{}`: {}", library.shown(path), read.error)));
        return std::nullopt;
    }
};

Entries definitions(Reading& reading, const std::string& folder, NodeKind kind) {
    Entries entries;
    for (const std::string& name : reading.library.names(folder)) {
        const std::optional<FileId> file = reading.add(folder + "/" + name + ".rod");
        if (!file) continue;
        const Tree tree = parse(reading.sources, *file, reading.diagnostics);
        if (tree.empty()) continue;
        for (const NodeId child : tree.children(tree.root())) {
            if (tree.kind(child) != kind) continue;
            DefinitionText text = definition_text(tree, child);
            entries.push_back({std::move(text.name), std::move(text.summary), std::move(text.details)});
        }
    }
    return entries;
}

std::string wood_details(const WoodSpecies& wood) {
    std::string text = fmt::format("{}\n  common name  {}\n  density      {} kg/m3 at 12 % moisture\n",
                                   wood.key, wood.common, wood.density.get_d());
    if (wood.hardness) text += fmt::format("  hardness     {} N, side grain\n", wood.hardness->get_d());
    if (wood.tangential > 0)
        text += fmt::format(
            "  movement     {:.3g} % along the rays, {:.3g} % along the rings, for each percent of "
            "moisture\n",
            100 * wood.radial.get_d(), 100 * wood.tangential.get_d());
    if (!wood.caution.empty()) text += fmt::format("  take care    {}\n", wood.caution);
    if (wood.sheet) text += "  a sheet material\n";
    return text;
}

Entries woods(Reading& reading) {
    Entries entries;
    const std::optional<FileId> file = reading.add("data/woods.yaml");
    auto table = file ? read_woods(reading.sources, *file, reading.diagnostics) : std::nullopt;
    const std::optional<FileId> ways = table ? reading.add("data/wood_ways.yaml") : std::nullopt;
    if (!ways || !read_wood_ways(reading.sources, *ways, *table, reading.diagnostics)) return entries;
    for (const WoodSpecies& wood : table->all())
        entries.push_back({wood.key, wood.common, wood_details(wood)});
    return entries;
}

std::string option_line(const OptionSpec& option) {
    std::string choices;
    for (const std::string& choice : option.choices) choices += (choices.empty() ? "" : "|") + choice;
    return fmt::format("  --{}{}{}  {} (default: {})\n", option.name, choices.empty() ? "" : " ", choices,
                       option.help, option.default_value);
}

Entries backends(Reading&) {
    Entries entries;
    Diagnostics diagnostics;  // a module that cannot be used is reported by `build`
    for (const auto& backend : all_backends({}, backend_folder(), diagnostics)) {
        std::string details = fmt::format("{}\n  {}\n", backend->name(), backend->summary());
        for (const OptionSpec& option : backend->options()) details += option_line(option);
        entries.push_back({backend->name(), backend->summary(), std::move(details)});
    }
    return entries;
}

Entries checks(Reading&) {
    Entries entries;
    for (const Check& check : all_checks()) {
        std::string details = fmt::format("{}\n  {}\n", check.name, check.summary);
        for (const Code code : check.codes)
            details += fmt::format("  {}  {}\n", info(code).code, info(code).title);
        entries.push_back({std::string(check.name), std::string(check.summary), std::move(details)});
    }
    return entries;
}

struct Topic {
    std::string_view name;
    std::string_view one;  // what one of them is called
    Entries (*entries)(Reading&);
};

constexpr Topic topics[] = {
    {"joints", "joint", [](Reading& reading) { return definitions(reading, "joints", NodeKind::joint); }},
    {"shapes", "shape", [](Reading& reading) { return definitions(reading, "shapes", NodeKind::shape); }},
    {"woods", "wood", woods},
    {"checks", "check", checks},
    {"backends", "backend", backends},
};

std::vector<std::string> topic_names() {
    std::vector<std::string> names;
    for (const Topic& topic : topics) names.emplace_back(topic.name);
    return names;
}

std::string one_line_each(const Entries& entries) {
    std::size_t width = 0;
    for (const Entry& entry : entries) width = std::max(width, entry.name.size());
    std::string text;
    for (const Entry& entry : entries) text += fmt::format("{:{}}  {}\n", entry.name, width, entry.summary);
    return text;
}

Diagnostic unknown_entry(const Topic& topic, const Entries& entries, const std::string& name) {
    std::vector<std::string> names;
    for (const Entry& entry : entries) names.push_back(entry.name);
    const std::string near = nearest_name(name, std::move(names));
    return diagnose(Code::bad_command, {}, fmt::format("there is no {} `{}`", topic.one, name))
        .hint(near.empty() ? fmt::format("`rodwright list {}` prints all", topic.name)
                           : fmt::format("`{}` is the nearest", near));
}

struct ListArguments {
    std::string topic;
    std::string name;
    std::string stdlib_folder;
};

ExitStatus list(const Console& console, const ListArguments& arguments) {
    const std::string& name = arguments.name;
    const Topic& topic = *std::find_if(std::begin(topics), std::end(topics),
                                       [&](const Topic& each) { return each.name == arguments.topic; });
    const DiskWorld world;
    const LibraryFiles library(world, if_given(arguments.stdlib_folder));
    Reading reading{library};
    Entries entries = topic.entries(reading);
    if (!reading.diagnostics.ok()) return console.report(reading.diagnostics, reading.sources);
    std::sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) { return a.name < b.name; });
    if (name.empty()) {
        console.print(one_line_each(entries));
        return ExitStatus::clean;
    }
    const auto found =
        std::find_if(entries.begin(), entries.end(), [&](const Entry& each) { return each.name == name; });
    if (found == entries.end()) return console.report(unknown_entry(topic, entries, name));
    console.print(found->details);
    return ExitStatus::clean;
}

}  // namespace

void add_list(CLI::App& program, Session& session) {
    CLI::App* command =
        add_command(program, "list", "List joints, shapes, woods, checks or backends, or tell all about one");
    auto arguments = std::make_shared<ListArguments>();
    command->add_option("WHAT", arguments->topic, "joints, shapes, woods, checks or backends")
        ->required()
        ->type_name("")
        ->check(one_of(topic_names()));
    command->add_option("NAME", arguments->name, "The one to tell all about")->type_name("");
    add_stdlib_option(*command, arguments->stdlib_folder);
    command->callback([&session, arguments] {
        session.run = [&session, arguments] { return list(session.console, *arguments); };
    });
}

}  // namespace rodwright
