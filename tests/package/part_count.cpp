#include <fmt/format.h>

#include "compiler/plugin/backend.hpp"

namespace {

// Writes parts.txt: how many parts the piece has, and how long they are laid end to end.
class PartCount : public rodwright::Backend {
  public:
    std::string name() const override { return "part_count"; }
    std::string summary() const override { return "how many parts there are"; }
    std::vector<rodwright::OptionSpec> options() const override {
        return {{"greeting", rodwright::OptionType::word, "parts", {}, "the word before the number"}};
    }
    void emit(const rodwright::BackendInput& input, const rodwright::OptionValues& options,
              rodwright::OutputFolder& out, rodwright::Diagnostics&) const override {
        rodwright::Rational length = 0;
        for (const rodwright::Part& part : input.piece.parts) {
            length += input.piece[part.kind].overall(rodwright::Axis::wide);
        }
        out.write("parts.txt", fmt::format("{} {}, {}\n", options.at("greeting"), input.piece.parts.size(),
                                           rodwright::format_length(length, input.piece.style)));
    }
};

}  // namespace

RODWRIGHT_BACKEND(PartCount);
