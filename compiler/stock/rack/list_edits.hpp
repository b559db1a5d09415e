// Entries taken out of a list of a data file and others put at its end, in the list's own style. Internal to
// compiler/stock/rack.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compiler/data/yaml_reader.hpp"
#include "compiler/stock/rack/text_edits.hpp"

namespace rodwright {

struct ListChange {
    std::vector<bool> gone;          // one for each entry
    std::vector<std::string> added;  // maps in braces, their lines divided by `\n`
};

// What all lists of one file share.
struct FileStyle {
    std::string_view text;
    std::string_view line_end;    // "\n" or "\r\n"
    std::size_t key_column = 0;   // of the keys of the file
    std::size_t dash_column = 0;  // of the entries of a new list
    bool in_braces = false;       // the file is one map in braces
};

// A list whose entries begin with `-` on lines of their own.
void edit_block_list(const FileStyle& file, const YamlNode& list, const ListChange& change, TextEdits& edits);
// A list in brackets.
void edit_flow_list(const FileStyle& file, const YamlNode& list, const ListChange& change, TextEdits& edits);

// A list for a key that stands there without one.
void fill_block_list(const FileStyle& file, const YamlNode& key, const std::vector<std::string>& added,
                     TextEdits& edits);
void fill_flow_list(const FileStyle& file, const YamlNode& key, const std::vector<std::string>& added,
                    TextEdits& edits);

// A key with a list, behind `before`, which is a list of the file and not empty; `last_gone` tells that its
// last entry goes.
void add_block_list(const FileStyle& file, std::string_view key, const YamlNode& before, bool last_gone,
                    const std::vector<std::string>& added, TextEdits& edits);
void add_flow_list(const FileStyle& file, std::string_view key, const YamlNode& before,
                   const std::vector<std::string>& added, TextEdits& edits);

// A key with a list in front of all keys of the file.
void lead_block_list(const FileStyle& file, std::string_view key, const YamlNode& root,
                     const std::vector<std::string>& added, TextEdits& edits);
void lead_flow_list(const FileStyle& file, std::string_view key, const YamlNode& root,
                    const std::vector<std::string>& added, TextEdits& edits);

// The lines of an entry with the file's line ends, those after the first two further in than `column`.
std::string indented(const FileStyle& file, const std::string& entry, std::size_t column);

}  // namespace rodwright
