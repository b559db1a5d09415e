#include "compiler/stock/cutting/tidy.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace rodwright::cutting {
namespace {

// A rectangle apart from its place: what parallel cuts make of it, and a code that equal pieces share.
struct Piece {
    CutNode node;
    std::vector<Piece> strips;
    bool dust = false;  // behind the last strip, so that a cut takes this off, too
    std::vector<int> code;

    bool is_waste() const { return node.kind == CutNode::Kind::waste; }
};

using Extents = std::map<std::pair<Axis, int>, int>;

Piece read(const CutTree& tree, int index, Extents& counts) {
    Piece piece;
    piece.node = tree.nodes[static_cast<std::size_t>(index)];
    const Axis axis = piece.node.axis;
    const auto continues = [&](int rest) {
        const CutNode& node = tree.nodes[static_cast<std::size_t>(rest)];
        return node.kind == CutNode::Kind::cut && node.axis == axis;
    };
    for (int rest = index; piece.node.kind == CutNode::Kind::cut && !piece.dust;) {
        if (!continues(rest)) {
            piece.strips.push_back(read(tree, rest, counts));
            break;
        }
        const CutNode& cut = tree.nodes[static_cast<std::size_t>(rest)];
        piece.strips.push_back(read(tree, cut.first, counts));
        piece.dust = cut.second == CutNode::none;
        rest = cut.second;
    }
    for (const Piece& strip : piece.strips) {
        if (!strip.is_waste()) ++counts[{axis, strip.node.area.size[axis]}];
    }
    return piece;
}

// Whether each cut has a side of that extent or more.
bool all_held(const Piece& piece, int least) {
    const auto extent = [&](const Piece& strip) { return strip.node.area.size[piece.node.axis]; };
    int rest = 0;
    for (std::size_t i = piece.strips.size(); i-- > 0;) {
        const int own = extent(piece.strips[i]);
        const bool is_cut_off = i + 1 < piece.strips.size() || piece.dust;
        if (is_cut_off && std::max(own, rest) < least) return false;
        rest += own;
    }
    return true;
}

void sort_strips(Piece& piece, const Extents& counts, int least_held) {
    const Axis axis = piece.node.axis;
    const auto extent = [&](const Piece& strip) { return strip.node.area.size[axis]; };
    int last = 0;
    if (!piece.dust && std::none_of(piece.strips.begin(), piece.strips.end(),
                                    [](const Piece& strip) { return strip.is_waste(); })) {
        const auto rarity = [&](const Piece& strip) {
            return std::make_pair(counts.at({axis, extent(strip)}), extent(strip));
        };
        last =
            extent(*std::min_element(piece.strips.begin(), piece.strips.end(),
                                     [&](const Piece& a, const Piece& b) { return rarity(a) < rarity(b); }));
    }
    for (const int sign : {-1, 1, -1}) {
        const auto rank = [&](const Piece& strip) {
            return std::make_tuple(strip.is_waste(), extent(strip) == last, sign * extent(strip));
        };
        std::stable_sort(piece.strips.begin(), piece.strips.end(), [&](const Piece& a, const Piece& b) {
            return rank(a) != rank(b) ? rank(a) < rank(b) : a.code < b.code;
        });
        if (all_held(piece, least_held)) return;
    }
}

void sort(Piece& piece, const StockPiece& stock, const Extents& counts, Size least_held) {
    const CutNode& node = piece.node;
    for (Piece& strip : piece.strips) sort(strip, stock, counts, least_held);
    if (!piece.strips.empty() && !stock.has_defect_in(node.area))
        sort_strips(piece, counts, least_held[node.axis]);
    piece.code = {static_cast<int>(node.kind), node.part,
                  node.turned ? 1 : 0,         static_cast<int>(node.axis),
                  node.area.size.along[0],     node.area.size.along[1]};
    for (const Piece& strip : piece.strips) {
        piece.code.insert(piece.code.end(), strip.code.begin(), strip.code.end());
    }
    piece.code.push_back(-1);
}

class Writer {
  public:
    explicit Writer(Size kerf) : kerf_(kerf) {}

    CutTree tree(int stock, const Piece& piece) && {
        tree_.stock = stock;
        tree_.nodes.push_back(piece.node);
        write(0, piece);
        return std::move(tree_);
    }

  private:
    CutNode& at(int index) { return tree_.nodes[static_cast<std::size_t>(index)]; }

    int add(const Rectangle& area) {
        tree_.nodes.emplace_back();
        tree_.nodes.back().area = area;
        return static_cast<int>(tree_.nodes.size()) - 1;
    }

    // The node has its area already.
    void write(int index, const Piece& piece) {
        if (piece.strips.empty()) {
            const Rectangle area = at(index).area;
            at(index) = piece.node;
            at(index).area = area;
            return;
        }
        int rest = index;
        for (std::size_t i = 0; i < piece.strips.size(); ++i) {
            const bool last = i + 1 == piece.strips.size();
            if (last && !piece.dust) return write(rest, piece.strips[i]);
            rest = cut_off(rest, piece.node.axis, piece.strips[i], last);
        }
    }

    // Gives the rest.
    int cut_off(int index, Axis axis, const Piece& strip, bool leaves_dust) {
        const int extent = strip.node.area.size[axis];
        Rectangle first = at(index).area;
        Rectangle second = first;
        first.size[axis] = extent;
        second.corner[axis] += extent + kerf_[axis];
        second.size[axis] -= extent + kerf_[axis];
        CutNode cut;
        cut.kind = CutNode::Kind::cut;
        cut.area = at(index).area;
        cut.axis = axis;
        cut.position = first.corner[axis] + extent;
        cut.first = add(first);
        cut.second = leaves_dust ? CutNode::none : add(second);
        at(index) = cut;
        write(cut.first, strip);
        return cut.second;
    }

    Size kerf_;
    CutTree tree_;
};

Amount waste_area(const CutTree& tree) {
    Amount sum = 0;
    for (const CutNode& node : tree.nodes) {
        if (node.kind == CutNode::Kind::waste) sum += node.area.size.area();
    }
    return sum;
}

}  // namespace

void tidy(const Problem& problem, CuttingPlan& plan) {
    std::vector<std::tuple<int, Amount, std::vector<int>, CutTree>> sheets;
    for (const CutTree& tree : plan.sheets) {
        Extents counts;
        Piece piece = read(tree, 0, counts);
        sort(piece, problem.stock[static_cast<std::size_t>(tree.stock)], counts, problem.rule.least_held);
        sheets.emplace_back(tree.stock, waste_area(tree), piece.code,
                            Writer(problem.kerf).tree(tree.stock, piece));
    }
    const auto rank = [](const auto& sheet) {
        return std::tie(std::get<0>(sheet), std::get<1>(sheet), std::get<2>(sheet));
    };
    std::stable_sort(sheets.begin(), sheets.end(),
                     [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
    plan.sheets.clear();
    for (auto& sheet : sheets) plan.sheets.push_back(std::move(std::get<3>(sheet)));
}

}  // namespace rodwright::cutting
