#include "compiler/plugin/backend_table.hpp"

#include "backends/boards/boards_backend.hpp"
#include "backends/cutlist/cut_list_backend.hpp"
#include "backends/graph/graph_backend.hpp"
#include "backends/model/model_backend.hpp"
#include "backends/packet/packet.hpp"
#include "backends/steps/steps_backend.hpp"
#include "backends/svg/svg_backend.hpp"

namespace rodwright {

using MakeBackend = std::unique_ptr<Backend> (*)();

static constexpr MakeBackend backend_table[] = {
    make_cutlist_backend, make_boards_backend, make_steps_backend, make_graph_backend,
    make_packet_backend,  make_model_backend,  make_svg_backend,
};

std::vector<std::unique_ptr<Backend>> linked_backends() {
    std::vector<std::unique_ptr<Backend>> backends;
    for (const MakeBackend make : backend_table) backends.push_back(make());
    return backends;
}

}  // namespace rodwright
