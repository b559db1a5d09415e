// The interface of backends. Ours and a stranger's are the same: a name, the options it takes as data, and
// emit(). See DEVELOPERS.md, "How to add a backend".
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <variant>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/graph/piece.hpp"
#include "compiler/plugin/output_folder.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

// Goes up with every change of what a backend sees; a module built for another version is refused.
inline constexpr std::uint32_t backend_interface_version = 5;

struct WoodPlan;  // compiler/stock/plan/wood_plan.hpp
struct WorkPlan;  // compiler/workplan/work_plan.hpp
struct Findings;  // compiler/check/findings.hpp

// What a backend works from. The piece is complete: a design with errors never reaches a backend.
struct BackendInput {
    const Piece& piece;
    const SourceManager& sources;
    SolidStore& solids;
    std::vector<std::pair<std::string, std::string>> environment;  // SOURCE_DATE_EPOCH where it was set
    const WoodPlan* wood = nullptr;      // only for who needs it, and where there is a rack
    const Findings* findings = nullptr;  // only for who needs them: of the compiler and the checks, no errors
    const WorkPlan* work = nullptr;      // only for who needs it
};

enum class OptionType : std::uint8_t { word, flag, whole_number };

struct OptionSpec {
    std::string name;  // "sheet": `--sheet a4` on the command line
    OptionType type = OptionType::word;
    std::string default_value;
    std::vector<std::string> choices;  // of a word; empty: any
    std::string help;
};

// Checked against the specs before emit() sees it: every option is there.
using OptionValues = std::map<std::string, std::string>;

class Backend {
  public:
    virtual ~Backend() = default;
    virtual std::string name() const = 0;     // "cutlist": `--only cutlist`
    virtual std::string summary() const = 0;  // one line for `rodwright list backends`
    virtual std::vector<OptionSpec> options() const { return {}; }
    virtual bool needs_solids() const { return false; }
    virtual bool needs_wood_plan() const { return false; }
    virtual bool needs_work_plan() const { return false; }  // and solids with it
    virtual bool needs_findings() const { return false; }
    // Writes its files into `out`. Reports into `diagnostics`; on an error nothing of `out` is kept.
    virtual void emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
                      Diagnostics& diagnostics) const = 0;
};

}  // namespace rodwright

// What a loadable backend exports: these two functions, by way of RODWRIGHT_BACKEND(ClassName).
extern "C" {
using RodwrightInterfaceVersion = std::uint32_t (*)();
using RodwrightMakeBackend = rodwright::Backend* (*)();
}

#define RODWRIGHT_BACKEND(ClassName)                          \
    extern "C" std::uint32_t rodwright_interface_version() {  \
        return rodwright::backend_interface_version;          \
    }                                                         \
    extern "C" rodwright::Backend* rodwright_make_backend() { \
        return new ClassName;                                 \
    }                                                         \
    static_assert(true)
