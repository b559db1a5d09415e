#include "compiler/revision.hpp"

#include <algorithm>
#include <sstream>
#include <string_view>

namespace rodwright {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t short_length = 7;
constexpr std::size_t full_length = 40;  // of SHA-1; SHA-256 has 64

// The first line of a file; empty if it cannot be read.
std::optional<std::string> first_line(const fs::path& file, const World& world) {
    const ReadResult read = world.read(file.generic_string());
    if (!read.text) return std::nullopt;
    std::string line = read.text->substr(0, read.text->find('\n'));
    if (line.ends_with('\r')) line.pop_back();
    return line;
}

std::optional<std::string> after(const std::string& line, std::string_view key) {
    return line.starts_with(key) ? std::optional(line.substr(key.size())) : std::nullopt;
}

bool is_commit(const std::string& name) {
    const auto is_hex = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); };
    return name.size() >= full_length && std::all_of(name.begin(), name.end(), is_hex);
}

// `.git` is a folder; of a further working tree it is a file that names one.
std::optional<fs::path> repository_of(const fs::path& folder, const World& world) {
    for (fs::path at = folder;; at = at.parent_path()) {
        if (first_line(at / ".git" / "HEAD", world)) return at / ".git";
        if (const auto line = first_line(at / ".git", world)) {
            if (const auto named = after(*line, "gitdir: ")) return at / *named;
        }
        if (at == at.parent_path()) return std::nullopt;
    }
}

// "HASH refs/heads/main", one a line.
std::optional<std::string> packed(const fs::path& repository, const std::string& reference,
                                  const World& world) {
    const ReadResult read = world.read((repository / "packed-refs").generic_string());
    if (!read.text) return std::nullopt;
    std::istringstream lines(*read.text);
    for (std::string commit, name; lines >> commit && std::getline(lines >> std::ws, name);) {
        if (name == reference) return commit;
    }
    return std::nullopt;
}

std::optional<std::string> commit_at(const fs::path& repository, const std::string& reference,
                                     const World& world) {
    if (auto commit = first_line(repository / reference, world)) return commit;
    return packed(repository, reference, world);
}

}  // namespace

Revision committed_revision(const fs::path& folder, const World& world) {
    const std::optional<fs::path> repository = repository_of(folder, world);
    if (!repository) return {"", "no repository of git holds the design"};
    const std::optional<std::string> head = first_line(*repository / "HEAD", world);
    if (!head) return {"", "the repository's `HEAD` cannot be read"};
    std::optional<std::string> commit = head;
    if (const auto reference = after(*head, "ref: ")) {
        commit = commit_at(*repository, *reference, world);
        // Branches of a further working tree are kept with those of the first.
        const auto common = first_line(*repository / "commondir", world);
        if (!commit && common) commit = commit_at(*repository / *common, *reference, world);
        if (!commit) return {"", "nothing has been committed yet on `" + *reference + "`"};
    }
    if (!is_commit(*commit)) return {"", "the repository names no commit where it should"};
    return {commit->substr(0, short_length), ""};
}

}  // namespace rodwright
