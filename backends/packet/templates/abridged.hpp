// A length at full size of which long plain stretches are left out, so that it takes less paper.
#pragma once

#include <vector>

#include "backends/packet/context.hpp"

namespace rodwright::packet {

class Abridged {
  public:
    struct Stretch {
        Rational low;
        Rational high;
        double at = 0;  // where `low` is drawn
    };

    // From `low` to `high`; drawn of it is what lies within about an inch of the wanted stretches (their `at`
    // is not used) and of the two ends. `unit`: what is left out comes out in round figures.
    Abridged(const Rational& low, const Rational& high, const std::vector<Stretch>& wanted, LengthUnit unit);

    // Where a place is drawn: one that is left out, at the break.
    double at(double x) const;
    double start() const { return drawn_.front().low.get_d(); }
    double end() const { return at(drawn_.back().high.get_d()); }
    bool has_breaks() const { return drawn_.size() > 1; }

    // Items whose x is the length's, drawn in every stretch, cut off at the breaks; `bottom` and `top` are
    // those of what the break lines cut. How long a stretch is left out stands between its break lines.
    void draw(drawing::Sheet& sheet, const std::vector<drawing::Item>& items, double bottom, double top,
              const FigureStyle& style) const;

    // What is said of breaks over the drawing; none where there are none.
    std::vector<std::string> note() const;

  private:
    std::vector<Stretch> drawn_;
};

}  // namespace rodwright::packet
