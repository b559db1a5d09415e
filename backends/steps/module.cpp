#include "backends/steps/steps_backend.hpp"

RODWRIGHT_BACKEND(rodwright::StepsBackend);
