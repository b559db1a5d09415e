#include "backends/packet/templates/guide_bush.hpp"

#include <algorithm>
#include <stdexcept>

#include "compiler/data/shop.hpp"
#include "compiler/stdlib.hpp"

namespace rodwright::packet {

namespace {

Shop read_embedded() {
    const auto& files = stdlib_files();
    const auto file = std::ranges::find(files, "data/shop.yaml", &EmbeddedFile::path);
    if (file == files.end()) throw std::logic_error("data/shop.yaml was not built in");
    SourceManager sources;
    Diagnostics diagnostics;
    std::optional<Shop> shop = read_shop(sources, sources.add(file->path, file->text), diagnostics);
    if (!shop) throw std::logic_error("data/shop.yaml: " + diagnostics.list()[0].message);
    return std::move(*shop);
}

}  // namespace

Rational bush_offset(const Rational& bush, const Rational& bit) {
    return (bush - bit) / 2;
}

Rational opening_for(const Rational& pocket, const Rational& bush, const Rational& bit) {
    return pocket + 2 * bush_offset(bush, bit);
}

Rational least_clearance() {
    return inches(1, 8);
}

std::optional<Rational> bush_for(const Rational& bit, LengthUnit unit) {
    static const Shop shop = read_embedded();
    return shop.at_least("guide_bush", Rational(bit + least_clearance()), unit);
}

}  // namespace rodwright::packet
