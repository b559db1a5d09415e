// A design's files: the one that was named, those that it uses, and the library.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/evaluate/scope.hpp"
#include "compiler/world.hpp"

namespace rodwright {

// Reads a file of the library by its path in stdlib/ ("joints/housing.rod"), from the program itself or from
// the folder that --stdlib names.
class LibraryFiles {
  public:
    LibraryFiles(const World& world, std::optional<std::string> folder)
        : world_(world), folder_(std::move(folder)) {}
    ReadResult read(const std::string& path) const;
    // What a message calls a file of the library: `stdlib/joints/housing.rod`, or as --stdlib has it.
    std::string shown(const std::string& path) const;
    // Names without folder and ending: names("joints") is {"dowels", "edge_glue", ...}, sorted.
    std::vector<std::string> names(std::string_view folder) const;

  private:
    const World& world_;
    std::optional<std::string> folder_;
};

class Design {
  public:
    Design(const World& world, LibraryFiles library, SourceManager& sources, Diagnostics& diagnostics)
        : world_(world), library_(std::move(library)), sources_(sources), diagnostics_(diagnostics) {}

    // Reads the file and everything that it uses.
    void load(const std::string& path);
    // Text that stands for a file: `--set` on the command line. Returns its tree.
    const Tree& add_text(const std::string& name, std::string text);

    // The one piece of the design; empty (and reported) if there is none or several.
    Syntax piece() const { return piece_; }
    // Statements outside every definition, in reading order: shared lets and params, overlays.
    const std::vector<Syntax>& loose() const { return loose_; }
    // A definition of the design, or of the library file with that name. Empty if there is none.
    Syntax joint(std::string_view name);
    Syntax shape(std::string_view name);
    Syntax assembly(std::string_view name);
    std::vector<std::string> joint_names() const;
    std::vector<std::string> shape_names() const;

    // Whether any file of the design has a row whose count is to be found.
    bool has_fitted_rows() const;

    const LibraryFiles& library() const { return library_; }

  private:
    using Definitions = std::map<std::string, Syntax, std::less<>>;

    const World& world_;
    LibraryFiles library_;
    SourceManager& sources_;
    Diagnostics& diagnostics_;
    std::vector<std::unique_ptr<Tree>> trees_;
    std::map<std::string, bool> loaded_;  // paths
    std::size_t bytes_ = 0;               // of them all
    std::string root_folder_;
    Syntax piece_;
    std::vector<Syntax> loose_;
    Definitions joints_;
    Definitions shapes_;
    Definitions assemblies_;
    std::map<std::string, bool> library_tried_;

    const Tree& add_tree(const std::string& name, std::string text, bool library);
    void load_file(const std::string& path, Span asked_at);
    void take(const Tree& tree, const std::string& folder);
    void take_use(const Syntax& use, const std::string& folder);
    void take_piece(const Syntax& piece);
    void define(Definitions& definitions, const Syntax& definition);
    Syntax find(Definitions& definitions, std::string_view folder, std::string_view name);
};

}  // namespace rodwright
