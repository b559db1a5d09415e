#include "backends/packet/templates/abridged.hpp"

#include <algorithm>

#include "backends/packet/parts/foreshortening.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr int worth = 60;           // mm: what is shorter is not left out
constexpr double break_width = 10;  // between the break lines

double length_of(const Abridged::Stretch& stretch) {
    return Rational(stretch.high - stretch.low).get_d();
}

}  // namespace

Abridged::Abridged(const Rational& low, const Rational& high, const std::vector<Stretch>& wanted,
                   LengthUnit unit) {
    const Rational kept = unit == LengthUnit::inch ? inches(1) : Rational(25);  // beside what is wanted
    std::vector<Stretch> all = wanted;
    all.push_back({low, low, 0});
    all.push_back({high, high, 0});
    std::sort(all.begin(), all.end(), [](const Stretch& a, const Stretch& b) { return a.low < b.low; });
    for (const Stretch& each : all) {
        const Rational from = std::max(low, Rational(each.low - kept));
        const Rational to = std::min(high, Rational(each.high + kept));
        if (!drawn_.empty() && from - drawn_.back().high < worth) {
            drawn_.back().high = std::max(drawn_.back().high, to);
        } else {
            drawn_.push_back({from, to, 0});
        }
    }
    double at = drawn_.front().low.get_d();
    for (Stretch& stretch : drawn_) {
        stretch.at = at;
        at += length_of(stretch) + break_width;
    }
}

double Abridged::at(double x) const {
    const Stretch* last = &drawn_.front();
    for (const Stretch& stretch : drawn_) {
        if (stretch.low.get_d() <= x) last = &stretch;
    }
    return last->at + std::min(x, last->high.get_d()) - last->low.get_d();
}

void Abridged::draw(Sheet& sheet, const std::vector<Item>& items, double bottom, double top,
                    const FigureStyle& style) const {
    constexpr double far = 20;  // mm: nothing drawn reaches further beyond bottom, top and ends
    for (std::size_t i = 0; i < drawn_.size(); ++i) {
        const Stretch& own = drawn_[i];
        const double end = own.at + length_of(own);
        const bool last = i + 1 == drawn_.size();
        const Rect window{own.at - (i == 0 ? far : 0), bottom - far, end + (last ? far : 0), top + far};
        if (has_breaks()) sheet.items.emplace_back(ClipStart{window});
        for (const Item& item : items) sheet.items.push_back(moved(item, {own.at - own.low.get_d(), 0}));
        if (has_breaks()) sheet.items.emplace_back(ClipEnd{});
        if (last) continue;
        draw_break_line(sheet, end, bottom, top);
        draw_break_line(sheet, end + break_width, bottom, top);
        sheet.text({figure(Rational(drawn_[i + 1].low - own.high), style),
                    FontFace::regular,
                    2.5,
                    {end + break_width / 2 + 1.25, (bottom + top) / 2},
                    Align::middle,
                    true});
    }
}

std::vector<std::string> Abridged::note() const {
    if (!has_breaks()) return {};
    return {"Between break lines a straight stretch is left out, as long as is written there."};
}

}  // namespace rodwright::packet
