// Which feature of a part a line of its view comes from.
//
// The kernel does not say: its booleans forget which body made which edge. The paper does, where a line lies
// on the outline of one feature's body and on no other's. Lines of the stock itself, and lines that several
// features could have made, are nobody's.
#pragma once

#include <optional>
#include <vector>

#include "backends/drawing/axis_view.hpp"

namespace rodwright::packet {

class LineFeatures {
  public:
    LineFeatures(const Kind& kind, const drawing::AxisView& view);
    // The index of the feature in its kind.
    std::optional<std::size_t> feature_of(const ViewLine& line) const;

  private:
    struct Outline {
        std::size_t feature = 0;
        std::vector<std::array<PaperPoint, 2>> lines;
        std::vector<std::pair<PaperPoint, double>> circles;  // centre, radius
    };
    void add_body(Outline& outline, const Body& body) const;
    void add_easing(Outline& outline, const Feature& feature) const;
    void add_line(Outline& outline, const Point3& from, const Point3& to) const;
    bool made_alike(std::size_t a, std::size_t b) const;

    const Kind& kind_;
    drawing::AxisView view_;
    std::vector<Outline> outlines_;
    Outline stock_;
};

}  // namespace rodwright::packet
