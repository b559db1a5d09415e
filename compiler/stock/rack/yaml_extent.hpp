// Where in its text a value of a data file ends. read_yaml() says where each begins; whoever changes a file
// and keeps every other byte has to know the rest. Internal to compiler/stock/rack.
//
// The text must be one that read_yaml() has read. Offsets are bytes; a line is told by the offset of its
// first byte and ends with a line feed.
#pragma once

#include <string_view>

#include "compiler/data/yaml_reader.hpp"

namespace rodwright {

std::size_t line_start(std::string_view text, std::size_t at);
// The start of the line after that of `at`, or the end of the text.
std::size_t next_line(std::string_view text, std::size_t at);
// How far `at` stands from the start of its line; a byte order mark is nothing.
std::size_t column_of(std::string_view text, std::size_t at);
// Past blanks, line ends and comments.
std::size_t skip_blank(std::string_view text, std::size_t at);
bool is_blank_line(std::string_view text, std::size_t line);
// Whether a line holds nothing from `at` on, or a comment.
bool rest_is_blank(std::string_view text, std::size_t at);
// The first of the lines above `line`, down from `lowest`, that are comments as far in as `column`.
std::size_t comments_above(std::string_view text, std::size_t line, std::size_t lowest, std::size_t column);

// Past the closing quote of what begins with a quote at `begin`.
std::size_t quoted_end(std::string_view text, std::size_t begin);
// Past the closing bracket of the list or map whose bracket is at `begin`.
std::size_t flow_end(std::string_view text, std::size_t begin);
// Whether a list or a map is written with brackets.
bool is_flow(std::string_view text, const YamlNode& node);
// Of a key without a value: its colon.
std::size_t colon_behind(std::string_view text, const YamlNode& key);
// How long the word is that stands at `at` for no value, `~` or `null`; 0 if there is none.
std::size_t no_value_size(std::string_view text, std::size_t at);
// Past a scalar that stands on one line.
std::size_t scalar_end(std::string_view text, const YamlNode& node);
// Past the lines of a value that hangs below what stands at `column`: all that is further in.
std::size_t lines_end(std::string_view text, const YamlNode& node, std::size_t column);

}  // namespace rodwright
