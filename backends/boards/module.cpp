#include "backends/boards/boards_backend.hpp"

RODWRIGHT_BACKEND(rodwright::BoardsBackend);
