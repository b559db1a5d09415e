#include "backends/graph/graph_backend.hpp"

RODWRIGHT_BACKEND(rodwright::GraphBackend);
