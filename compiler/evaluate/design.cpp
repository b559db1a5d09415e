#include "compiler/evaluate/design.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "compiler/limits.hpp"
#include "compiler/stdlib.hpp"
#include "grammar/parse.hpp"

namespace rodwright {

namespace {

// `a/./b/../c` without the detours; paths in a design always use '/'.
std::string clean(const std::string& path) {
    return std::filesystem::path(path).lexically_normal().generic_string();
}

std::string folder_of(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    return slash == std::string::npos ? "" : path.substr(0, slash + 1);
}

// Both are cleaned; `folder` ends in '/' or is empty for the folder of the run.
bool is_inside(const std::string& folder, const std::string& path) {
    if (path.rfind(folder, 0) != 0) return false;
    // A folder above the run's own begins with `..` itself: `../box/` does not hold `../box/../x`.
    const std::string below = path.substr(folder.size());
    return below != ".." && below.rfind("../", 0) != 0 && below.rfind('/', 0) != 0;
}

}  // namespace

ReadResult LibraryFiles::read(const std::string& path) const {
    if (folder_) return world_.read(*folder_ + "/" + path);
    const std::vector<EmbeddedFile>& files = stdlib_files();
    const auto found =
        std::lower_bound(files.begin(), files.end(), path,
                         [](const EmbeddedFile& file, const std::string& p) { return file.path < p; });
    if (found == files.end() || found->path != path) return {std::nullopt, "no such file in the library"};
    return {found->text, ""};
}

std::string LibraryFiles::shown(const std::string& path) const {
    return folder_.value_or("stdlib") + "/" + path;
}

std::vector<std::string> LibraryFiles::names(std::string_view folder) const {
    std::vector<std::string> files;
    const std::string prefix = std::string(folder) + "/";
    if (folder_) {
        files = world_.file_names(*folder_ + "/" + std::string(folder));
    } else {
        for (const EmbeddedFile& file : stdlib_files()) {
            if (file.path.starts_with(prefix)) files.push_back(file.path.substr(prefix.size()));
        }
    }
    constexpr std::string_view ending = ".rod";
    std::vector<std::string> result;
    for (const std::string& file : files) {
        if (file.ends_with(ending)) result.push_back(file.substr(0, file.size() - ending.size()));
    }
    return result;
}

const Tree& Design::add_tree(const std::string& name, std::string text, bool library) {
    const FileId file = sources_.add(name, std::move(text), library);
    trees_.push_back(std::make_unique<Tree>(parse(sources_, file, diagnostics_)));
    return *trees_.back();
}

const Tree& Design::add_text(const std::string& name, std::string text) {
    return add_tree(name, std::move(text), false);
}

void Design::load(const std::string& path) {
    const std::string root = clean(path);
    root_folder_ = folder_of(root);
    load_file(root, Span{});
    if (!piece_ && diagnostics_.ok()) {
        Span start;
        if (!trees_.empty() && !trees_.front()->empty()) start = {trees_.front()->file(), 0, 0};
        diagnostics_.add(diagnose(Code::no_piece, start, fmt::format("there is no piece in `{}`", path))
                             .hint("a design begins with `piece \"Name\" {`"));
    }
}

void Design::load_file(const std::string& path, Span asked_at) {
    if (!loaded_.emplace(path, true).second) return;
    if (loaded_.size() > limits::files) {
        diagnostics_.add(diagnose(Code::too_large, asked_at,
                                  fmt::format("the design uses more than {} files", limits::files)));
        return;
    }
    ReadResult read = world_.read(path);
    if (!read.text) {
        diagnostics_.add(
            diagnose(Code::cannot_read, asked_at, fmt::format("cannot read `{}`: {}", path, read.error)));
        return;
    }
    bytes_ += read.text->size();
    // One file that is too large by itself is refused when it is parsed.
    if (bytes_ > limits::file_bytes && read.text->size() <= limits::file_bytes) {
        diagnostics_.add(diagnose(Code::too_large, asked_at,
                                  fmt::format("the files of this design have more than {} bytes together",
                                              limits::file_bytes))
                             .hint("write what stands there many times once, as a row or an `assembly`"));
        return;
    }
    take(add_tree(path, std::move(*read.text), false), folder_of(path));
}

void Design::take(const Tree& tree, const std::string& folder) {
    if (tree.empty()) return;
    for (const NodeId id : tree.children(tree.root())) {
        const Syntax syntax{&tree, id};
        switch (syntax.kind()) {
            case NodeKind::use:
                take_use(syntax, folder);
                break;
            case NodeKind::piece:
                take_piece(syntax);
                break;
            case NodeKind::joint:
                define(joints_, syntax);
                break;
            case NodeKind::shape:
                define(shapes_, syntax);
                break;
            case NodeKind::assembly:
                define(assemblies_, syntax);
                break;
            case NodeKind::broken:
                break;
            default:
                loose_.push_back(syntax);
                break;
        }
    }
}

void Design::take_use(const Syntax& use, const std::string& folder) {
    const Syntax name = use.child(0);
    const std::string wanted = unquoted(name);
    if (library_.read(wanted).text) {
        if (!loaded_.emplace("stdlib/" + wanted, true).second) return;
        take(add_tree(library_.shown(wanted), *library_.read(wanted).text, true), "");
        return;
    }
    const std::string path = clean(folder + wanted);
    if (wanted.empty() || wanted.front() == '/' || !is_inside(root_folder_, path)) {
        diagnostics_.add(diagnose(Code::outside_project, name.span(),
                                  fmt::format("`{}` is outside the design's folder", wanted))
                             .hint("keep the files of a design in one folder, below the file that is built"));
        return;
    }
    load_file(path, name.span());
}

void Design::take_piece(const Syntax& piece) {
    if (!piece_) {
        piece_ = piece;
        return;
    }
    diagnostics_.add(
        diagnose(Code::no_piece, piece.child(0).span(), "a design has one piece, this is a second")
            .label(piece_.child(0).span(), "the first is here")
            .hint("build parts that are used twice as an `assembly`"));
}

void Design::define(Definitions& definitions, const Syntax& definition) {
    const Syntax name = definition.child(0);
    const auto [found, added] = definitions.emplace(std::string(name.text()), definition);
    if (added) return;
    diagnostics_.add(
        diagnose(Code::defined_twice, name.span(),
                 fmt::format("the {} `{}` is defined twice", kind_word(definition.kind()), name.text()))
            .label(found->second.child(0).span(), "first defined here"));
}

Syntax Design::find(Definitions& definitions, std::string_view folder, std::string_view name) {
    if (const auto found = definitions.find(name); found != definitions.end()) return found->second;
    const std::string path = fmt::format("{}/{}.rod", folder, name);
    if (!library_tried_.emplace(path, true).second) return {};
    ReadResult read = library_.read(path);
    if (!read.text) return {};
    take(add_tree(library_.shown(path), std::move(*read.text), true), "");
    const auto found = definitions.find(name);
    return found == definitions.end() ? Syntax{} : found->second;
}

Syntax Design::joint(std::string_view name) {
    return find(joints_, "joints", name);
}

Syntax Design::shape(std::string_view name) {
    return find(shapes_, "shapes", name);
}

Syntax Design::assembly(std::string_view name) {
    return find(assemblies_, "assemblies", name);
}

static std::vector<std::string> with_library(const std::map<std::string, Syntax, std::less<>>& own,
                                             std::vector<std::string> names) {
    for (const auto& [name, syntax] : own) names.push_back(name);
    std::sort(names.begin(), names.end());
    names.erase(std::unique(names.begin(), names.end()), names.end());
    return names;
}

std::vector<std::string> Design::joint_names() const {
    return with_library(joints_, library_.names("joints"));
}

std::vector<std::string> Design::shape_names() const {
    return with_library(shapes_, library_.names("shapes"));
}

bool Design::has_fitted_rows() const {
    for (const std::unique_ptr<Tree>& tree : trees_) {
        for (std::size_t i = 0; i + 1 < tree->nodes().size(); ++i) {
            const NodeId inside{static_cast<std::uint32_t>(i + 1)};
            if (tree->nodes()[i].kind == NodeKind::count && tree->kind(inside) == NodeKind::word) return true;
        }
    }
    return false;
}

}  // namespace rodwright
