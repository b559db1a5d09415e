#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "compiler/cli/command.hpp"
#include "compiler/stdlib.hpp"

namespace rodwright {

namespace {

Diagnostic unknown_code(const std::string& spelled) {
    std::vector<std::string> codes;
    for (const CodeInfo& each : all_codes()) codes.emplace_back(each.code);
    const std::string near = nearest_name(spelled, std::move(codes));
    const std::string all = "`rodwright explain` lists every code";
    return diagnose(Code::bad_command, {}, fmt::format("there is no code `{}`", spelled))
        .hint(near.empty() ? all : fmt::format("`{}` is the nearest; {}", near, all));
}

ExitStatus list_codes(const Console& console) {
    for (const CodeInfo& each : all_codes()) console.print(fmt::format("{}  {}\n", each.code, each.title));
    return ExitStatus::clean;
}

ExitStatus explain(const Console& console, const std::string& spelled) {
    if (spelled.empty()) return list_codes(console);
    const CodeInfo* code = find_code(spelled);
    if (code == nullptr) return console.report(unknown_code(spelled));
    const std::string page = std::string(code->code) + ".md";
    const auto& pages = explain_files();
    const auto found =
        std::find_if(pages.begin(), pages.end(), [&](const EmbeddedFile& each) { return each.path == page; });
    console.print(found->text);
    return ExitStatus::clean;
}

}  // namespace

void add_explain(CLI::App& program, Session& session) {
    CLI::App* command = add_command(program, "explain", "Say what a code in a message means, with examples");
    auto code = std::make_shared<std::string>();
    command->add_option("CODE", *code, "Such as E0301; without it, all codes are listed")->type_name("");
    command->callback(
        [&session, code] { session.run = [&session, code] { return explain(session.console, *code); }; });
}

}  // namespace rodwright
