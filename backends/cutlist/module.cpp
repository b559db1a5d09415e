#include "backends/cutlist/cut_list_backend.hpp"

RODWRIGHT_BACKEND(rodwright::CutListBackend);
