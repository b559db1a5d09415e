#include "backends/model/model_backend.hpp"

RODWRIGHT_BACKEND(rodwright::ModelBackend);
