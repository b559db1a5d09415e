#include "tests/support/design.hpp"

#include <fmt/format.h>

#include "compiler/diagnostics/render.hpp"

namespace rodwright::testing {

std::string CompiledDesign::report() const {
    std::string text;
    for (const Diagnostic& diagnostic : compiled_.diagnostics.sorted()) {
        text += info(diagnostic.code).code;
        if (diagnostic.primary.file != FileId::none) {
            const Position at =
                compiled_.sources->position(diagnostic.primary.file, diagnostic.primary.begin);
            text += fmt::format(" {}:{}", at.line, at.column);
        }
        text += fmt::format(" {}\n", diagnostic.message);
    }
    return text;
}

std::string CompiledDesign::rendered() const {
    std::string text;
    for (const Diagnostic& diagnostic : compiled_.diagnostics.sorted()) {
        text += render(diagnostic, *compiled_.sources, false);
    }
    return text;
}

std::string CompiledDesign::help() const {
    REQUIRE_MESSAGE(compiled_.diagnostics.list().size() == 1, rendered());
    return compiled_.diagnostics.list().front().help;
}

const Piece& CompiledDesign::piece() const {
    REQUIRE_MESSAGE(compiled_.piece.has_value(), rendered());
    return *compiled_.piece;
}

const Part& CompiledDesign::part(const std::string& name) const {
    for (const Part& each : piece().parts) {
        if (each.name == name) return each;
    }
    FAIL("no part `" << name << "`");
    return piece().parts.front();
}

const Quantity& CompiledDesign::param(const std::string& name) const {
    for (const auto& [known, quantity] : piece().params) {
        if (known == name) return quantity;
    }
    FAIL("no param `" << name << "`");
    return piece().params.front().second;
}

std::vector<std::string> CompiledDesign::part_names() const {
    std::vector<std::string> names;
    for (const Part& each : piece().parts) names.push_back(each.name);
    return names;
}

CompiledDesign compile_files(const Files& files, const std::string& path, CompileOptions options) {
    options.path = path;
    return {MemoryWorld(files), options};
}

CompiledDesign compile_text(const std::string& text, CompileOptions options) {
    return compile_files({{"design.rod", text}}, "design.rod", std::move(options));
}

CompiledDesign compile_body(const std::string& body, CompileOptions options) {
    return compile_text(
        "piece \"Sample\" { unit mm to 1/2; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" + body + "\n}\n",
        std::move(options));
}

Quantity value_of(const std::string& expression) {
    CAPTURE(expression);
    return compile_body("param value = " + expression).param("value");
}

std::string trouble_with(const std::string& expression) {
    const CompiledDesign design = compile_body("param value = " + expression);
    std::string text;
    for (const Diagnostic& diagnostic : design.compilation().diagnostics.sorted()) {
        text += fmt::format("{} {}\n", info(diagnostic.code).code, diagnostic.message);
    }
    return text;
}

std::string stick(const std::string& head, const std::string& grain, const std::vector<int>& low,
                  const std::vector<int>& size, const std::string& more) {
    return fmt::format(
        "part {} {{ grain {}; left = piece.left + {}mm; front = piece.front + {}mm; bottom = piece.bottom + "
        "{}mm; wide = {}mm; deep = {}mm; tall = {}mm\n{} }}\n",
        head, grain, low.at(0), low.at(1), low.at(2), size.at(0), size.at(1), size.at(2), more);
}

}  // namespace rodwright::testing
