#include "tests/unit/drawing/xml_check.hpp"

#include <regex>
#include <set>
#include <vector>

namespace rodwright::testing {

namespace {

const std::string name = "[A-Za-z_][A-Za-z0-9_.-]*";
const std::regex entity("&(?!(amp|lt|gt|quot|apos|#[0-9]+);)");

std::string text_fault(const std::string& text) {
    if (text.find('>') != std::string::npos) return "a bare >";
    for (const char c : text) {
        if (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') return "a control character";
    }
    return std::regex_search(text, entity) ? "a bare &" : "";
}

bool attributes_are_good(std::string rest) {
    static const std::regex one("^\\s+(" + name + ")=\"([^\"<]*)\"");
    std::set<std::string> known;
    for (std::smatch found; std::regex_search(rest, found, one); rest = found.suffix()) {
        if (!known.insert(found[1]).second || std::regex_search(found[2].str(), entity)) return false;
    }
    return rest.find_first_not_of(" \n") == std::string::npos;
}

class XmlReader {
  public:
    // What stands between < and >.
    std::string tag(std::string inside) {
        if (inside.starts_with("/")) return close(inside.substr(1));
        const bool empty = inside.ends_with("/");
        if (empty) inside.pop_back();
        const std::string element = inside.substr(0, inside.find_first_of(" \n"));
        static const std::regex good(name);
        if (!std::regex_match(element, good)) return "no name: <" + inside + ">";
        if (open_.empty() && seen_root_) return "<" + element + "> stands beside the root";
        if (!attributes_are_good(inside.substr(element.size()))) return "attributes of <" + element + ">";
        seen_root_ = true;
        if (!empty) open_.push_back(element);
        return "";
    }
    std::string end() const {
        if (!seen_root_) return "no element";
        return open_.empty() ? "" : "<" + open_.back() + "> is not closed";
    }

  private:
    std::string close(const std::string& element) {
        if (open_.empty()) return "`</" + element + ">` closes nothing";
        if (open_.back() != element) return "`</" + element + ">` closes <" + open_.back() + ">";
        open_.pop_back();
        return "";
    }

    std::vector<std::string> open_;
    bool seen_root_ = false;
};

}  // namespace

std::string xml_fault(const std::string& text) {
    XmlReader reader;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t opens = std::min(text.find('<', at), text.size());
        if (const std::string fault = text_fault(text.substr(at, opens - at)); !fault.empty()) return fault;
        if (opens == text.size()) break;
        const std::size_t closes = text.find('>', opens);
        if (closes == std::string::npos) return "a tag without an end";
        if (const std::string fault = reader.tag(text.substr(opens + 1, closes - opens - 1)); !fault.empty())
            return fault;
        at = closes + 1;
    }
    return reader.end();
}

}  // namespace rodwright::testing
