#include "backends/cutlist/cut_list_backend.hpp"

#include "backends/cutlist/writers.hpp"

namespace rodwright {

void CutListBackend::emit(const BackendInput& input, const OptionValues&, OutputFolder& out,
                          Diagnostics&) const {
    const CutList list = make_cut_list(input.piece, input.wood);
    out.write("cutlist.txt", cut_list_text(list));
    out.write("cutlist.csv", cut_list_csv(list));
    out.write("hardware.csv", hardware_csv(list));
    out.write("cutlist.md", cut_list_markdown(list));
    out.write("cutlist.json", cut_list_json(list));
}

std::unique_ptr<Backend> make_cutlist_backend() {
    return std::make_unique<CutListBackend>();
}

}  // namespace rodwright
