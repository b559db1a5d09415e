#include "backends/graph/graph_backend.hpp"

namespace rodwright {

void GraphBackend::emit(const BackendInput& input, const OptionValues&, OutputFolder& out,
                        Diagnostics&) const {
    out.write("piece.yaml", piece_yaml(input.piece));
}

std::unique_ptr<Backend> make_graph_backend() {
    return std::make_unique<GraphBackend>();
}

}  // namespace rodwright
