#include "compiler/stock/rough/blanks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/rough/flatten.hpp"
#include "compiler/stock/rough/rough_part.hpp"

namespace rodwright {
namespace {

// A mirror image is of the same sizes; where it is of another wood, it is cut from other boards.
bool mirror_shares(const Piece& piece, KindId mirror, KindId kind) {
    const Kind& image = piece[mirror];
    return image.mirror_of == kind && image.wood == piece[kind].wood && !image.glued && !piece[kind].glued;
}

// One entry for each part of the kind and of the kinds that share its blanks.
std::vector<KindId> parts_to_group(const Piece& piece, KindId id) {
    std::vector<KindId> parts(piece[id].parts.size(), id);
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        const KindId other = static_cast<KindId>(i);
        if (mirror_shares(piece, other, id)) parts.insert(parts.end(), piece.kinds[i].parts.size(), other);
    }
    return parts;
}

// The leaves of a book come out of one thickness, not one length.
bool is_in_book(const Piece& piece, const std::vector<KindId>& kinds) {
    const auto is_leaf = [&](PartId part) { return std::ranges::count(kinds, piece[part].kind) > 0; };
    return std::ranges::any_of(piece.matches, [&](const Match& match) {
        return match.how == MatchKind::book && std::ranges::any_of(match.parts, is_leaf);
    });
}

class Blanks {
  public:
    Blanks(const Piece& piece, KindId id, const MillingData& milling)
        : piece_(piece), id_(id), milling_(milling), part_(rough_part(piece[id], piece.style, milling)) {}

    std::vector<Blank> make() const {
        if (part_.length() >= milling_.shortest_milled()) return {single()};
        const std::optional<KindId> twin = piece_[id_].mirror_of;
        if (twin && mirror_shares(piece_, id_, *twin)) return {};
        return grouped(parts_to_group(piece_, id_));
    }

  private:
    std::string show(const Rational& length) const { return format_length(length, piece_.style); }

    Rational length_of(int parts) const {
        const Rational& kerf = milling_.kerf(milling_.saws.crosscut);
        // The allowance at the ends holds the cuts there.
        return length_with_kerfs(part_.finished[Axis::wide], parts, 2, kerf) + 2 * part_.end;
    }

    Blank blank(std::vector<KindId> kinds, const Rational& length, std::string reason) const {
        Blank made;
        made.kinds = std::move(kinds);
        made.size = {{length, part_.width, part_.thickness}};
        made.thickness_class = part_.thickness_class;
        made.reasons.push_back(std::move(reason));
        made.reasons.insert(made.reasons.end(), part_.reasons.begin(), part_.reasons.end());
        return made;
    }

    std::string length_reason(int parts) const {
        const std::string each = show(part_.finished[Axis::wide]);
        const std::string ends = fmt::format("{} at each end {}", show(part_.end), part_.end_reason);
        if (parts == 1) return fmt::format("length: {} + {}", each, ends);
        return fmt::format(
            "length: {} of {} end to end with {} between for the saw, {}; cut apart after planing, as one "
            "alone is "
            "shorter than the {} that the machines take",
            parts, each, show(milling_.kerf(milling_.saws.crosscut)), ends, show(milling_.shortest_milled()));
    }

    Blank single() const {
        Blank made = blank({id_}, part_.length(), length_reason(1));
        made.count = static_cast<int>(piece_[id_].parts.size());
        return made;
    }

    Blank group(std::vector<KindId> kinds) const {
        const int parts = static_cast<int>(kinds.size());
        const Rational& shortest = milling_.shortest_milled();
        const Rational length = length_of(parts);
        if (length >= shortest) return blank(std::move(kinds), length, length_reason(parts));
        return blank(std::move(kinds), shortest,
                     length_reason(parts) +
                         fmt::format("; made {} long, the shortest that the machines take", show(shortest)));
    }

    // As many blanks as are long enough, the parts spread evenly over them.
    std::vector<Blank> grouped(const std::vector<KindId>& parts) const {
        const int count = static_cast<int>(parts.size());
        int least = 1;
        while (least < count && length_of(least) < milling_.shortest_milled()) ++least;
        const int blanks = is_in_book(piece_, parts) ? count : std::max(count / least, 1);
        std::vector<Blank> made;
        for (int i = 0; i < blanks; ++i) {
            const auto first = parts.begin() + static_cast<std::ptrdiff_t>(count) * i / blanks;
            const auto last = parts.begin() + static_cast<std::ptrdiff_t>(count) * (i + 1) / blanks;
            Blank next = group({first, last});
            const auto alike = std::ranges::find(made, next.kinds, &Blank::kinds);
            if (alike == made.end()) {
                made.push_back(std::move(next));
            } else {
                ++alike->count;
            }
        }
        return made;
    }

    const Piece& piece_;
    KindId id_;
    const MillingData& milling_;
    RoughPart part_;
};

}  // namespace

std::vector<Blank> blanks_of(const Piece& piece, KindId id, const MillingData& milling) {
    return Blanks(piece, id, milling).make();
}

}  // namespace rodwright
