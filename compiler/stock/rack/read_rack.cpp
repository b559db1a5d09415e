#include "compiler/stock/rack/read_rack.hpp"

#include <fmt/format.h>

#include <map>

#include "compiler/data/yaml_fields.hpp"
#include "compiler/limits.hpp"
#include "compiler/stock/rack/rack_fields.hpp"
#include "compiler/stock/rack/read_entries.hpp"

namespace rodwright {

namespace {

// The entries of a list that may be missing or empty, and whether all of them could be read.
template <typename Entry, typename Read>
bool read_all(const YamlNode* list, std::vector<Entry>& entries, Read read) {
    bool ok = true;
    if (list == nullptr) return ok;
    for (const YamlNode& node : list->children) {
        std::optional<Entry> entry = read(node);
        ok = ok && entry.has_value();
        if (entry) entries.push_back(std::move(*entry));
    }
    return ok;
}

const YamlNode* first_price(const YamlNode& node) {
    if (node.key == "price") return &node;
    for (const YamlNode& child : node.children) {
        if (const YamlNode* price = first_price(child)) return price;
    }
    return nullptr;
}

class RackReader {
  public:
    RackReader(const WoodTable& woods, Diagnostics& diagnostics) : woods_(woods), diagnostics_(diagnostics) {}

    std::optional<Rack> read(const YamlNode& root);

  private:
    bool few_enough(std::initializer_list<const YamlNode*> lists);
    void read_boards(const YamlNode* list, bool offcuts);
    void read_sheets(const YamlNode* list);
    void read_dealer(const YamlNode& dealer);
    void check_name(const YamlNode& entry);
    void check_count(const YamlNode& entry, int count);
    void check_money(const YamlNode& root);

    const WoodTable& woods_;
    Diagnostics& diagnostics_;
    Rack rack_;
    bool ok_ = true;
    std::size_t entries_ = 0;
    std::size_t pieces_ = 0;
    std::map<std::string, Span> names_;
};

std::optional<Rack> RackReader::read(const YamlNode& root) {
    FieldReader fields(root, {"money", "boards", "offcuts", "sheets", "dealer"}, diagnostics_);
    if (root.kind != YamlKind::map) return std::nullopt;
    rack_.money = words_of(fields, "money");
    const YamlNode* boards = fields.optional_list("boards");
    const YamlNode* offcuts = fields.optional_list("offcuts");
    const YamlNode* sheets = fields.optional_list("sheets");
    if (!few_enough({boards, offcuts, sheets})) return std::nullopt;
    read_boards(boards, false);
    read_boards(offcuts, true);
    read_sheets(sheets);
    if (const YamlNode* dealer = fields.optional_map("dealer")) read_dealer(*dealer);
    if (rack_.money.empty()) check_money(root);
    if (!ok_ || !fields.ok()) return std::nullopt;
    return std::move(rack_);
}

// Counted before anything is made of them.
bool RackReader::few_enough(std::initializer_list<const YamlNode*> lists) {
    for (const YamlNode* list : lists) {
        if (list == nullptr) continue;
        const std::size_t left = limits::rack_entries - entries_;
        if (list->children.size() > left) {
            diagnostics_.add(
                diagnose(Code::too_large, list->children[left].span,
                         fmt::format("a rack's file has at most {} entries", limits::rack_entries)));
            return false;
        }
        entries_ += list->children.size();
    }
    return true;
}

void RackReader::read_boards(const YamlNode* list, bool offcuts) {
    const bool all_read = read_all(list, rack_.boards, [&](const YamlNode& node) {
        check_name(node);
        std::optional<RackBoard> board = read_board(node, offcuts, woods_, diagnostics_);
        if (board) check_count(node, board->count);
        return board;
    });
    ok_ = ok_ && all_read;
}

void RackReader::read_sheets(const YamlNode* list) {
    const bool all_read = read_all(list, rack_.sheets, [&](const YamlNode& node) {
        check_name(node);
        std::optional<RackSheet> sheet = read_sheet(node, woods_, diagnostics_);
        if (sheet) check_count(node, sheet->count);
        return sheet;
    });
    ok_ = ok_ && all_read;
}

void RackReader::read_dealer(const YamlNode& dealer) {
    FieldReader fields(dealer, {"lumber", "sheets", "dowels"}, diagnostics_);
    const YamlNode* lumber = fields.optional_list("lumber");
    const YamlNode* sheets = fields.optional_list("sheets");
    const YamlNode* dowels = fields.optional_list("dowels");
    if (!few_enough({lumber, sheets, dowels})) {
        ok_ = false;
        return;
    }
    const auto with = [this](auto read_offer) {
        return [this, read_offer](const YamlNode& node) { return read_offer(node, woods_, diagnostics_); };
    };
    const bool lumber_read = read_all(lumber, rack_.lumber, with(read_lumber_offer));
    const bool sheets_read = read_all(sheets, rack_.sheet_offers, with(read_sheet_offer));
    const bool dowels_read = read_all(dowels, rack_.dowels, with(read_dowel_offer));
    ok_ = ok_ && fields.ok() && lumber_read && sheets_read && dowels_read;
}

void RackReader::check_name(const YamlNode& entry) {
    const YamlNode* name = entry.kind == YamlKind::map ? find_entry(entry, "name") : nullptr;
    if (name == nullptr || name->kind != YamlKind::scalar) return;
    const auto [first, is_new] = names_.emplace(name->text, name->span);
    if (is_new) return;
    ok_ = false;
    diagnostics_.add(
        diagnose(Code::bad_data, name->span, fmt::format("`{}` is already a name", shortened(name->text)))
            .label(first->second, "of this one")
            .hint("give each board and each sheet a name of its own; boards alike share one entry with "
                  "`count`"));
}

void RackReader::check_count(const YamlNode& entry, int count) {
    const bool passed = pieces_ > limits::rack_pieces;
    pieces_ += static_cast<std::size_t>(count);
    if (passed || pieces_ <= limits::rack_pieces) return;
    ok_ = false;
    diagnostics_.add(diagnose(Code::too_large, entry.span,
                              fmt::format("a rack holds at most {} boards and sheets", limits::rack_pieces)));
}

void RackReader::check_money(const YamlNode& root) {
    const YamlNode* price = first_price(root);
    if (price == nullptr) return;
    ok_ = false;
    diagnostics_.add(diagnose(Code::bad_data, price->key_span, "there are prices, but not in which money")
                         .hint("say it at the top of the file: `money: crowns`"));
}

}  // namespace

std::optional<Rack> read_rack(const SourceManager& sources, FileId file, const WoodTable& woods,
                              Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    return RackReader(woods, diagnostics).read(*root);
}

}  // namespace rodwright
