#include <malloc.h>

#include <cstdio>
#include <string_view>

#include "compiler/cli/program.hpp"

// Pictures and solids take large pieces of memory and give them back at once. Kept by the program, they need
// not be mapped and cleared anew each time: a twelfth of what a packet takes.
static void keep_freed_memory() {
    constexpr int mebibyte = 1 << 20;
    mallopt(M_MMAP_THRESHOLD, 32 * mebibyte);  // the largest that glibc takes
    mallopt(M_TRIM_THRESHOLD, 1024 * mebibyte);
    mallopt(M_TOP_PAD, 16 * mebibyte);
}

int main(int argc, char** argv) {
    // Asked often and by scripts: answered before anything else is set up.
    if (argc == 2 && std::string_view(argv[1]) == "--version") {
        return std::puts("rodwright " RODWRIGHT_VERSION) < 0 || std::fflush(stdout) != 0 ? 3 : 0;
    }
    keep_freed_memory();
    return rodwright::run_program(argc, argv);
}
