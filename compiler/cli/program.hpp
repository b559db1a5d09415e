// The whole command line.
#pragma once

namespace rodwright {

// Returns the exit status. Lets no exception out.
int run_program(int argc, const char* const* argv);

}  // namespace rodwright
