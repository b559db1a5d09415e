#include <algorithm>
#include <string>

#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

const std::vector<CodeInfo>& all_codes() {
    static const std::vector<CodeInfo> codes = {
#define RODWRIGHT_CODE(id, code, severity, title) {Code::id, code, severity, title, #id},
#include "compiler/diagnostics/codes.def"
#undef RODWRIGHT_CODE
    };
    return codes;
}

const CodeInfo& info(Code code) {
    return all_codes().at(static_cast<std::size_t>(code));
}

static std::string upper(std::string_view text) {
    std::string raised(text);
    for (char& c : raised) {
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    }
    return raised;
}

const CodeInfo* find_code(std::string_view spelled) {
    const std::string wanted = upper(spelled);
    const auto& codes = all_codes();
    const auto found =
        std::find_if(codes.begin(), codes.end(), [&](const CodeInfo& each) { return each.code == wanted; });
    return found == codes.end() ? nullptr : &*found;
}

}  // namespace rodwright
