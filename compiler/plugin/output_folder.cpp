#include "compiler/plugin/output_folder.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>

#include "compiler/plugin/staged_file.hpp"

namespace rodwright {

namespace {

namespace fs = std::filesystem;

bool stays_inside(const std::string& name) {
    const fs::path path(name);
    const bool odd_character = std::any_of(name.begin(), name.end(), [](char c) {
        return static_cast<unsigned char>(c) < 0x20U || c == 0x7f || c == '\\';
    });
    if (odd_character || path.is_absolute() || path.filename().empty()) return false;
    return std::none_of(path.begin(), path.end(),
                        [](const fs::path& step) { return step.empty() || step == "." || step == ".."; });
}

Diagnostic cannot_write(const fs::path& path, const std::error_code& error) {
    return diagnose(Code::cannot_write, {},
                    fmt::format("cannot write `{}`: {}", path.string(), error.message()));
}

// Fails here rather than when the first file is staged, so that the message names the folder.
std::optional<Diagnostic> make_folder(const fs::path& folder) {
    std::error_code error;
    if (!folder.empty()) fs::create_directories(folder, error);
    if (!error) return std::nullopt;
    return diagnose(Code::cannot_write, {},
                    fmt::format("cannot make the folder `{}`: {}", folder.string(), error.message()));
}

std::optional<Diagnostic> publish_all(std::vector<StagedFile>& staged) {
    for (StagedFile& file : staged) {
        const auto error = file.publish();
        if (!error) continue;
        for (StagedFile& published : staged) published.take_back();
        return cannot_write(file.target(), error);
    }
    for (StagedFile& file : staged) file.settle();
    return std::nullopt;
}

// The names must reach the disk too. A file system that cannot sync a folder has nothing to add, so its
// answer is not an error.
void sync_folder(const fs::path& folder) {
    const int opened = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (opened < 0) return;
    ::fsync(opened);
    ::close(opened);
}

std::optional<Diagnostic> write_all(const fs::path& folder, const std::map<std::string, std::string>& files) {
    std::vector<StagedFile> staged;
    staged.reserve(files.size());
    if (auto failed = make_folder(folder)) return failed;
    for (const auto& [name, bytes] : files) {
        const fs::path target = folder / name;
        if (auto failed = make_folder(target.parent_path())) return failed;
        StagedFile& file = staged.emplace_back(target, staged.size());
        if (const auto error = file.write(bytes)) return cannot_write(target, error);
    }
    if (auto failed = publish_all(staged)) return failed;
    for (const StagedFile& file : staged) sync_folder(file.target().parent_path());
    return std::nullopt;
}

}  // namespace

void OutputFolder::write(std::string name, std::string bytes) {
    if (!stays_inside(name)) {
        refused_.push_back(diagnose(Code::cannot_write, {},
                                    fmt::format("an output is named `{}`, which is not a file inside the "
                                                "output folder",
                                                name)));
        return;
    }
    const auto [place, is_new] = files_.emplace(std::move(name), std::move(bytes));
    if (is_new) return;
    refused_.push_back(
        diagnose(Code::cannot_write, {}, fmt::format("two outputs are both named `{}`", place->first)));
}

bool OutputFolder::commit(Diagnostics& diagnostics) {
    for (const Diagnostic& each : refused_) diagnostics.add(each);
    if (!refused_.empty()) return false;
    if (!folder_) return true;
    auto failed = write_all(*folder_, files_);
    if (failed) diagnostics.add(std::move(*failed));
    return !failed;
}

bool replace_file(const fs::path& path, std::string_view bytes, Diagnostics& diagnostics) {
    std::error_code unresolved;
    const fs::path resolved = fs::weakly_canonical(path, unresolved);
    StagedFile file(unresolved ? path : resolved, 0);
    std::error_code error = file.write(bytes);
    if (!error) error = file.publish();
    if (!error) file.settle();
    if (error) diagnostics.add(cannot_write(path, error));
    return !error;
}

}  // namespace rodwright
