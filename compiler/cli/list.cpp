#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

#include "compiler/cli/command.hpp"
#include "compiler/cli/definition_text.hpp"
#include "compiler/data/woods.hpp"
#include "compiler/plugin/load_backend.hpp"
#include "compiler/stdlib.hpp"
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

// Parses the library's files below `folder`; they are part of the program and have no errors.
Entries definitions(std::string_view folder, NodeKind kind) {
    Entries entries;
    SourceManager sources;
    Diagnostics diagnostics;
    for (const EmbeddedFile& file : stdlib_files()) {
        if (!file.path.starts_with(folder)) continue;
        const Tree tree = parse(sources, sources.add(file.path, file.text, true), diagnostics);
        for (const NodeId child : tree.children(tree.root())) {
            if (tree.kind(child) != kind) continue;
            DefinitionText text = definition_text(tree, child);
            entries.push_back({std::move(text.name), std::move(text.summary), std::move(text.details)});
        }
    }
    if (!diagnostics.ok()) throw std::logic_error("the library of joints and shapes cannot be read");
    return entries;
}

std::string wood_details(const WoodSpecies& wood) {
    std::string text = fmt::format("{}\n  common name  {}\n  density      {} kg/m3 at 12 % moisture\n",
                                   wood.key, wood.common, wood.density.get_d());
    if (wood.hardness) text += fmt::format("  hardness     {} N, side grain\n", wood.hardness->get_d());
    if (wood.sheet) text += "  a sheet material\n";
    return text;
}

Entries woods() {
    SourceManager sources;
    Diagnostics diagnostics;
    const auto& files = stdlib_files();
    const auto file = std::find_if(files.begin(), files.end(),
                                   [](const EmbeddedFile& each) { return each.path == "data/woods.yaml"; });
    if (file == files.end()) throw std::logic_error("the library has no woods");
    const auto table = read_woods(sources, sources.add(file->path, file->text, true), diagnostics);
    if (!table) throw std::logic_error("the library's woods cannot be read");
    Entries entries;
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

Entries backends() {
    Entries entries;
    Diagnostics diagnostics;  // a module that cannot be used is reported by `build`
    for (const auto& backend : all_backends({}, backend_folder(), diagnostics)) {
        std::string details = fmt::format("{}\n  {}\n", backend->name(), backend->summary());
        for (const OptionSpec& option : backend->options()) details += option_line(option);
        entries.push_back({backend->name(), backend->summary(), std::move(details)});
    }
    return entries;
}

struct Topic {
    std::string_view name;
    std::string_view one;  // what one of them is called
    Entries (*entries)();
};

constexpr Topic topics[] = {
    {"joints", "joint", [] { return definitions("joints/", NodeKind::joint); }},
    {"shapes", "shape", [] { return definitions("shapes/", NodeKind::shape); }},
    {"woods", "wood", woods},
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

ExitStatus list(const Console& console, const std::string& topic_name, const std::string& name) {
    const Topic& topic = *std::find_if(std::begin(topics), std::end(topics),
                                       [&](const Topic& each) { return each.name == topic_name; });
    Entries entries = topic.entries();
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
        add_command(program, "list", "List joints, shapes, woods or backends, or tell all about one");
    auto words = std::make_shared<std::pair<std::string, std::string>>();
    command->add_option("WHAT", words->first, "joints, shapes, woods or backends")
        ->required()
        ->type_name("")
        ->check(one_of(topic_names()));
    command->add_option("NAME", words->second, "The one to tell all about")->type_name("");
    command->callback([&session, words] {
        session.run = [&session, words] { return list(session.console, words->first, words->second); };
    });
}

}  // namespace rodwright
