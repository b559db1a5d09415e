#include "backends/boards/boards_backend.hpp"

#include "backends/boards/writers.hpp"

namespace rodwright {

void BoardsBackend::emit(const BackendInput& input, const OptionValues&, OutputFolder& out,
                         Diagnostics&) const {
    if (input.wood == nullptr || !input.wood->planned) return;
    out.write("boards.txt", boards_text(input.piece, *input.wood));
    out.write("boards.json", boards_json(input.piece, *input.wood));
    if (!input.wood->purchases.empty()) out.write("buying.csv", buying_csv(*input.wood));
}

std::unique_ptr<Backend> make_boards_backend() {
    return std::make_unique<BoardsBackend>();
}

}  // namespace rodwright
