#include <cstdio>
#include <string_view>

#include "compiler/cli/program.hpp"

int main(int argc, char** argv) {
    // Asked often and by scripts: answered before anything else is set up.
    if (argc == 2 && std::string_view(argv[1]) == "--version") {
        return std::puts("rodwright " RODWRIGHT_VERSION) < 0 || std::fflush(stdout) != 0 ? 3 : 0;
    }
    return rodwright::run_program(argc, argv);
}
