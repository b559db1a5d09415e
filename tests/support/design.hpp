// Designs compiled from text, for tests of the front end: files in memory in, a piece and diagnostics out.
#pragma once

#include <doctest/doctest.h>

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "compiler/compile.hpp"

namespace rodwright::testing {

using Files = std::map<std::string, std::string>;

class CompiledDesign {
  public:
    CompiledDesign(const World& world, const CompileOptions& options) : compiled_(compile(world, options)) {}

    const Compilation& compilation() const { return compiled_; }
    // One line for each diagnostic, in the order in which they are shown: `E0301 4:10 message`.
    std::string report() const;
    // The same for people, carets and hints included.
    std::string rendered() const;
    // The help of the only diagnostic.
    std::string help() const;
    // Fails the test with the diagnostics if there is none.
    const Piece& piece() const;

    const Part& part(const std::string& name) const;  // "leg[left]"
    const Kind& kind(const std::string& part_name) const { return piece()[part(part_name).kind]; }
    // Of a part, in the piece's axes, in millimetres.
    const Rational& at(const std::string& part_name, Face face) const {
        return part(part_name).body.at(face);
    }
    const Quantity& param(const std::string& name) const;
    std::vector<std::string> part_names() const;

  private:
    Compilation compiled_;
};

// Of several files, the first of which is `path`.
CompiledDesign compile_files(const Files& files, const std::string& path, CompileOptions options = {});
CompiledDesign compile_text(const std::string& text, CompileOptions options = {});
// `body` in a piece that is 1000 mm each way, on its second line and those that follow.
CompiledDesign compile_body(const std::string& body, CompileOptions options = {});

// The value of an expression in a piece that knows nothing else.
Quantity value_of(const std::string& expression);
// What is wrong with it: `E0202 message`, a line for each.
std::string trouble_with(const std::string& expression);

// `grain`, a name and six faces: a stick of the piece. Sizes in millimetres.
std::string stick(const std::string& head, const std::string& grain, const std::vector<int>& low,
                  const std::vector<int>& size, const std::string& more = "");

}  // namespace rodwright::testing
