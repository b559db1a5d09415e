#include "backends/svg/svg_backend.hpp"

RODWRIGHT_BACKEND(rodwright::SvgBackend);
