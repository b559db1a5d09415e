// The designs in examples/, read from the disk.
#pragma once

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace rodwright::testing {

inline const std::vector<std::string>& example_names() {
    static const std::vector<std::string> names = {"chart_shelf", "instrument_tray", "keepers_table"};
    return names;
}

// A file in the folder of that example.
inline std::string example_file(const std::string& name, const std::string& file_name) {
    const std::string path = std::string(RODWRIGHT_SOURCE_DIR) + "/examples/" + name + "/" + file_name;
    std::ifstream file(path, std::ios::binary);
    REQUIRE_MESSAGE(file, "cannot read " << path);
    return {std::istreambuf_iterator<char>(file), {}};
}

inline std::string example_text(const std::string& name) {
    return example_file(name, name + ".rod");
}

}  // namespace rodwright::testing
