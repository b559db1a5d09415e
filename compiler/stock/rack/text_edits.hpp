// Changes to a text that leave every other byte as it is. Internal to compiler/stock/rack.
//
// All places are offsets in the text as it was.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace rodwright {

class TextEdits {
  public:
    explicit TextEdits(std::string_view text) : text_(text), gone_(text.size(), false) {}

    void remove(std::size_t begin, std::size_t end);
    // In front of the byte at `at`; what is inserted at one place stands there in the order of the calls.
    void insert(std::size_t at, const std::string& added);
    void replace(std::size_t begin, std::size_t end, const std::string& added);

    std::string applied() const;

  private:
    std::string_view text_;
    std::vector<bool> gone_;
    std::map<std::size_t, std::string> added_;
};

}  // namespace rodwright
