#include "backends/packet/packet.hpp"

RODWRIGHT_BACKEND(rodwright::PacketBackend);
