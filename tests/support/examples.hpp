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

inline std::string example_path(const std::string& name, const std::string& file_name) {
    return std::string(RODWRIGHT_SOURCE_DIR) + "/examples/" + name + "/" + file_name;
}

// A file in the folder of that example.
inline std::string example_file(const std::string& name, const std::string& file_name) {
    const std::string path = example_path(name, file_name);
    std::ifstream file(path, std::ios::binary);
    REQUIRE_MESSAGE(file, "cannot read " << path);
    return {std::istreambuf_iterator<char>(file), {}};
}

// What its shop does otherwise than the library says, if anything.
inline std::string example_milling(const std::string& name) {
    std::ifstream file(example_path(name, "milling.yaml"), std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

inline std::string example_text(const std::string& name) {
    return example_file(name, name + ".rod");
}

}  // namespace rodwright::testing
