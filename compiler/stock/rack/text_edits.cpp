#include "compiler/stock/rack/text_edits.hpp"

#include <algorithm>

namespace rodwright {

void TextEdits::remove(std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < std::min(end, gone_.size()); ++i) gone_[i] = true;
}

void TextEdits::insert(std::size_t at, const std::string& added) {
    added_[at] += added;
}

void TextEdits::replace(std::size_t begin, std::size_t end, const std::string& added) {
    remove(begin, end);
    insert(begin, added);
}

std::string TextEdits::applied() const {
    std::string text;
    auto next = added_.begin();
    for (std::size_t i = 0; i <= text_.size(); ++i) {
        if (next != added_.end() && next->first == i) text += (next++)->second;
        if (i < text_.size() && !gone_[i]) text += text_[i];
    }
    return text;
}

}  // namespace rodwright
