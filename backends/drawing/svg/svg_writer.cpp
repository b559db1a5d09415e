#include "backends/drawing/svg/svg_writer.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "backends/drawing/curve.hpp"
#include "backends/drawing/dashes.hpp"
#include "backends/drawing/line_style.hpp"
#include "backends/drawing/text_run.hpp"

namespace rodwright::drawing {

namespace {

// To a thousandth of a millimetre, without zeros at the end.
std::string number(double value) {
    std::string text = fmt::format("{:.3f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string hex(Colour colour) {
    return fmt::format("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue);
}

class Writer {
  public:
    // SVG's y points down.
    Writer(const Rect& window, const Fonts& fonts) : window_(window), fonts_(fonts) {}

    void operator()(const Stroke& stroke) {
        if (stroke.points.size() < 2) return;
        const LineStyle& style = line_style(stroke.role);
        if (!style.dashes.empty()) {
            std::string path;
            std::vector<Point> points = stroke.points;
            if (stroke.closed) points.push_back(points.front());
            for (const std::vector<Point>& dash : dashes_of(points, style.dashes)) path += lines(dash);
            draw(path, stroke.role);
        } else {
            const std::string path =
                stroke.smooth ? curves(bezier_through(stroke.points, stroke.closed)) : lines(stroke.points);
            draw(path + (stroke.closed ? "Z" : ""), stroke.role);
        }
    }
    void operator()(const Arc& arc) {
        const LineStyle& style = line_style(arc.role);
        std::string path;
        for (const Arc& dash : dashes_of(arc, style.dashes)) path += arcs(dash);
        draw(path, arc.role);
    }
    void operator()(const Fill& fill) {
        if (fill.points.size() < 3) return;
        element(fmt::format("<path d=\"{}Z\" style=\"fill:{}\"/>", lines(fill.points), hex(fill.colour)));
    }
    void operator()(const Disc& disc) {
        element(fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{}\"/>", x(disc.centre),
                            y(disc.centre), number(disc.radius), hex(disc.colour)));
    }
    void operator()(const Text& text) {
        const SetText set = set_text(text.text, text.face, text.height, fonts_);
        const double shift = text.align == Align::left     ? 0
                             : text.align == Align::middle ? -set.width / 2
                                                           : -set.width;
        element(fmt::format("<g transform=\"translate({} {}){} translate({} 0)\" aria-label=\"{}\">",
                            x(text.at), y(text.at), text.upward ? " rotate(-90)" : "", number(shift),
                            xml_text(text.text)));
        const std::string weight = text.face == FontFace::bold ? " font-weight=\"bold\"" : "";
        for (const PlacedRun& run : set.runs) {
            element(fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\"{}>{}</text>", number(run.offset.x),
                                number(-run.offset.y), number(run.height / capital_height), weight,
                                xml_text(run.text)));
        }
        for (const auto& [from, to] : set.bars) {
            element(fmt::format("<path d=\"M{} {}H{}\" class=\"dimension\"/>", number(from.x),
                                number(-from.y), number(to.x)));
        }
        element("</g>");
    }
    void operator()(const GroupStart& group) {
        element(fmt::format("<g><title>{}</title>", xml_text(group.name)));
        if (!group.source.empty()) element(fmt::format("<desc>{}</desc>", xml_text(group.source)));
    }
    void operator()(const GroupEnd&) { element("</g>"); }
    void operator()(const Link&) {}
    void operator()(const ClipStart& clip) {
        ++clips_;
        element(fmt::format(
            "<clipPath id=\"clip{0}\"><rect x=\"{1}\" y=\"{2}\" width=\"{3}\" height=\"{4}\"/></clipPath>\n"
            "<g clip-path=\"url(#clip{0})\">",
            clips_, x({clip.box.left, 0}), y({0, clip.box.top}), number(clip.box.width()),
            number(clip.box.height())));
    }
    void operator()(const ClipEnd&) { element("</g>"); }

    std::string text() && { return std::move(out_); }

  private:
    std::string x(Point point) const { return number(point.x - window_.left); }
    std::string y(Point point) const { return number(window_.top - point.y); }
    std::string pair(Point point) const { return x(point) + " " + y(point); }

    std::string lines(const std::vector<Point>& points) const {
        std::string path = "M" + pair(points[0]);
        for (std::size_t i = 1; i < points.size(); ++i) path += "L" + pair(points[i]);
        return path;
    }
    std::string curves(const std::vector<Point>& controls) const {
        std::string path = "M" + pair(controls[0]);
        for (std::size_t i = 1; i + 2 < controls.size(); i += 3)
            path += "C" + pair(controls[i]) + " " + pair(controls[i + 1]) + " " + pair(controls[i + 2]);
        return path;
    }
    // A whole circle has to be two of SVG's arcs.
    std::string arcs(const Arc& arc) const {
        const int pieces = arc.whole() ? 2 : 1;
        std::string path = "M" + pair(arc.from());
        for (int i = 1; i <= pieces; ++i) {
            const bool large = std::abs(arc.sweep) / pieces > std::numbers::pi;
            path += fmt::format("A{0} {0} 0 {1} {2} {3}", number(arc.radius), large ? 1 : 0,
                                arc.sweep > 0 ? 0 : 1, pair(arc.at(arc.start + arc.sweep * i / pieces)));
        }
        return path;
    }

    void draw(const std::string& path, LineRole role) {
        element(fmt::format("<path d=\"{}\" class=\"{}\"/>", path, name_of(role)));
    }
    void element(const std::string& text) { out_ += text + '\n'; }

    Rect window_;
    const Fonts& fonts_;
    std::string out_;
    int clips_ = 0;
};

std::string style_sheet() {
    std::string rules =
        "path{fill:none;stroke-linecap:round;stroke-linejoin:round}\n"
        "text{font-family:\"DejaVu Sans\",sans-serif}\n";
    for (const LineRole role : all_line_roles) {
        const LineStyle& style = line_style(role);
        rules += fmt::format(".{}{{stroke:{};stroke-width:{}}}\n", name_of(role), hex(style.colour),
                             number(style.width));
    }
    return rules;
}

}  // namespace

std::string xml_text(std::string_view text) {
    std::string out;
    for (const char each : text) {
        switch (each) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            case '"':
                out += "&quot;";
                break;
            default:
                out += each;
        }
    }
    return out;
}

std::string write_svg(const Sheet& sheet, const Rect& window, const std::string& description,
                      const Fonts& fonts) {
    Writer writer(window, fonts);
    for (const Item& item : sheet.items) std::visit(writer, item);
    return fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\" aria-labelledby=\"title "
        "desc\" "
        "width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 0 {0} {1}\">\n"
        "<title id=\"title\">{2}</title>\n<desc id=\"desc\">{3}</desc>\n<style>\n{4}</style>\n{5}</svg>\n",
        number(window.width()), number(window.height()), xml_text(sheet.title), xml_text(description),
        style_sheet(), std::move(writer).text());
}

}  // namespace rodwright::drawing
