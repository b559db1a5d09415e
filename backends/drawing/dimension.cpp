#include "backends/drawing/dimension.hpp"

#include <algorithm>
#include <cmath>

#include "backends/drawing/line_style.hpp"
#include "backends/drawing/spread.hpp"

namespace rodwright::drawing {

namespace {

constexpr double arrow_length = 2.5;
constexpr double arrow_half_width = 0.42;
constexpr double outside_reach = 4.5;          // of a line past arrows that point at each other from outside
constexpr double object_gap = 1;               // outline to extension line
constexpr double past_line = 8 * narrow_line;  // extension past the dimension line, ISO 129-1
constexpr double text_gap = 0.8;               // line to figure
constexpr double jog = 3;                      // where an extension line leans over to its figure
constexpr double stroke_half = 0.9;            // of the oblique stroke
constexpr double datum_radius = 0.9;

// Points are written for a dimension that runs across; an upright one swaps x and y.
Point along_run(Run run, double along, double away) {
    return run == Run::across ? Point{along, away} : Point{away, along};
}

void draw_extension(Sheet& sheet, Run run, double along, double from, double line_at) {
    const double sign = line_at >= from ? 1 : -1;
    sheet.line(LineRole::dimension, along_run(run, along, from + sign * object_gap),
               along_run(run, along, line_at + sign * past_line));
}

bool has_fraction(const std::string& text) {
    const std::vector<TextRun> runs = runs_of(text);
    return std::any_of(runs.begin(), runs.end(), [](const TextRun& run) { return run.stacked(); });
}

// Above the line, or left of an upright one: the baseline's distance from the line.
double baseline_lift(const std::string& text, const Fonts& fonts) {
    const SetText set = set_text(text, FontFace::regular, dimension_height, fonts);
    return set.below + (has_fraction(text) ? text_gap : arrow_half_width);
}

double width_of(const std::string& text, const Fonts& fonts) {
    return text_width(text, FontFace::regular, dimension_height, fonts);
}

// What stands over a dimension's line and what under it: the other unit, where both beside each other have no
// room between the extension lines.
struct Figure {
    std::string over;
    std::string under;
    double width = 0;
    bool fits = false;
};

Figure figure_in(const std::string& text, double room, const Fonts& fonts) {
    const double width = width_of(text, fonts);
    const std::size_t bracket = text.find(" [");
    if (width + 1 <= room || bracket == std::string::npos) return {text, "", width, width + 1 <= room};
    Figure figure{text.substr(0, bracket), text.substr(bracket + 1)};
    figure.width = std::max(width_of(figure.over, fonts), width_of(figure.under, fonts));
    figure.fits = figure.width + 1 <= room;
    return figure;
}

void draw_figure(Sheet& sheet, Run run, const Figure& figure, Point middle, const Fonts& fonts) {
    const bool across = run == Run::across;
    const auto draw = [&](const std::string& text, double away) {
        const Point at = across ? middle + Point{0, away} : middle - Point{away, 0};
        sheet.text({text, FontFace::regular, dimension_height, at, Align::middle, !across});
    };
    draw(figure.over, baseline_lift(figure.over, fonts));
    if (figure.under.empty()) return;
    const SetText under = set_text(figure.under, FontFace::regular, dimension_height, fonts);
    draw(figure.under, -text_gap - under.above);
}

// A figure wider than its dimension stands clear of the extension lines, on the side that they end on.
void draw_figure_outside(Sheet& sheet, const LengthDimension& dimension, double middle, const Fonts& fonts) {
    const bool across = dimension.run == Run::across;
    const double from = across ? dimension.from.y : dimension.from.x;
    const double outwards = dimension.line_at >= from ? 1 : -1;
    const SetText set = set_text(dimension.text, FontFace::regular, dimension_height, fonts);
    // Of an upright line what is left of it is over the figure's baseline.
    const bool over = (outwards > 0) == across;
    const double away = past_line + text_gap + (over ? set.below : set.above);
    sheet.text({dimension.text, FontFace::regular, dimension_height,
                along_run(dimension.run, middle, dimension.line_at + outwards * away), Align::middle,
                !across});
}

// Along the dimension: where the line runs, and the middle of the figure.
struct LineSpan {
    double low = 0;
    double high = 0;
    double figure = 0;
    bool arrows_inside = true;
};

LineSpan span_of(double low, double high, const Figure& figure, Overflow overflow) {
    LineSpan span{low, high, (low + high) / 2, high - low >= 2.5 * arrow_length};
    const double reach = span.arrows_inside ? 0 : outside_reach;
    span.low -= reach;
    span.high += reach;
    if (overflow == Overflow::outside || figure.fits) return span;
    const double beyond = arrow_length + figure.width;
    if (overflow == Overflow::beyond_low) {
        span.low = std::min(span.low, low - beyond);
        span.figure = low - beyond + figure.width / 2;
    } else {
        span.high = std::max(span.high, high + beyond);
        span.figure = high + beyond - figure.width / 2;
    }
    return span;
}

void draw_line_and_arrows(Sheet& sheet, Run run, double low, double high, double line_at,
                          const LineSpan& span) {
    sheet.line(LineRole::dimension, along_run(run, span.low, line_at), along_run(run, span.high, line_at));
    const double outwards = span.arrows_inside ? 1 : -1;
    draw_arrowhead(sheet, along_run(run, low, line_at), along_run(run, -outwards, 0));
    draw_arrowhead(sheet, along_run(run, high, line_at), along_run(run, outwards, 0));
}

std::vector<double> places_of(const RunningDimension& dimension, const Fonts& fonts) {
    std::vector<double> wanted;
    for (const Station& station : dimension.stations) wanted.push_back(station.at);
    return spread(wanted, figure_pitch(dimension.stations, fonts), dimension.low, dimension.high);
}

void draw_station(Sheet& sheet, const RunningDimension& dimension, const Station& station, double figure_at) {
    const Run run = dimension.run;
    const double sign = dimension.line_at >= dimension.outline ? 1 : -1;
    const double knee = dimension.line_at + sign * 1;
    sheet.polyline(LineRole::dimension,
                   {along_run(run, station.at, dimension.outline + sign * object_gap),
                    along_run(run, station.at, knee), along_run(run, figure_at, knee + sign * jog)});
    sheet.line(LineRole::dimension, along_run(run, station.at - stroke_half, dimension.line_at - stroke_half),
               along_run(run, station.at + stroke_half, dimension.line_at + stroke_half));
}

void draw_station_figure(Sheet& sheet, const RunningDimension& dimension, const std::string& text,
                         double figure_at, const Fonts& fonts) {
    const SetText set = set_text(text, FontFace::regular, dimension_height, fonts);
    const double middle = (set.above - set.below) / 2;
    const double beyond = 1 + jog + text_gap;
    if (dimension.run == Run::across) {
        sheet.text({text,
                    FontFace::regular,
                    dimension_height,
                    {figure_at + middle, dimension.line_at - beyond},
                    Align::right,
                    true});
    } else {
        const bool right = dimension.line_at >= dimension.outline;
        sheet.text({text,
                    FontFace::regular,
                    dimension_height,
                    {dimension.line_at + (right ? beyond : -beyond), figure_at - middle},
                    right ? Align::left : Align::right,
                    false});
    }
}

}  // namespace

void draw_arrowhead(Sheet& sheet, Point tip, Point direction) {
    const Point back = tip - direction * arrow_length;
    const Point side = Point{-direction.y, direction.x} * arrow_half_width;
    sheet.fill(black, {tip, back + side, back - side});
}

void draw_grain_arrow(Sheet& sheet, Point left) {
    constexpr double length = 16;
    const Point right = left + Point{length, 0};
    sheet.line(LineRole::dimension, left, right);
    draw_arrowhead(sheet, left, {-1, 0});
    draw_arrowhead(sheet, right, {1, 0});
    sheet.text({"grain", FontFace::regular, 2.5, right + Point{2, -1.25}, Align::left, false});
}

void draw_dimension(Sheet& sheet, const LengthDimension& dimension, const Fonts& fonts) {
    const Run run = dimension.run;
    const bool across = run == Run::across;
    const double from = across ? dimension.from.x : dimension.from.y;
    const double to = across ? dimension.to.x : dimension.to.y;
    draw_extension(sheet, run, from, across ? dimension.from.y : dimension.from.x, dimension.line_at);
    draw_extension(sheet, run, to, across ? dimension.to.y : dimension.to.x, dimension.line_at);
    const double low = std::min(from, to);
    const double high = std::max(from, to);
    const Figure figure = figure_in(dimension.text, high - low, fonts);
    const LineSpan span = span_of(low, high, figure, dimension.overflow);
    draw_line_and_arrows(sheet, run, low, high, dimension.line_at, span);
    if (!figure.fits && dimension.overflow == Overflow::outside) {
        draw_figure_outside(sheet, dimension, span.figure, fonts);
        return;
    }
    draw_figure(sheet, run, figure, along_run(run, span.figure, dimension.line_at), fonts);
}

double overflow_reach(const std::string& text, const Fonts& fonts) {
    return arrow_length + figure_in(text, 0, fonts).width;
}

double figure_pitch(const std::vector<Station>& stations, const Fonts& fonts) {
    double pitch = 0;
    for (const Station& station : stations) {
        const SetText set = set_text(station.text, FontFace::regular, dimension_height, fonts);
        pitch = std::max(pitch, set.above + set.below + 1);
    }
    return pitch;
}

bool fits(const RunningDimension& dimension, const Fonts& fonts) {
    if (dimension.stations.empty()) return true;
    const double needed =
        figure_pitch(dimension.stations, fonts) * static_cast<double>(dimension.stations.size() - 1);
    return needed <= dimension.high - dimension.low;
}

double running_depth(const std::vector<Station>& stations, const Fonts& fonts) {
    double depth = 0;
    for (const Station& station : stations) {
        depth = std::max(depth, text_width(station.text, FontFace::regular, dimension_height, fonts));
    }
    return 1 + jog + text_gap + depth;
}

void draw_running(Sheet& sheet, const RunningDimension& dimension, const Fonts& fonts) {
    if (dimension.stations.empty()) return;
    const Run run = dimension.run;
    const std::vector<double> places = places_of(dimension, fonts);
    const double first = std::min(dimension.datum, dimension.stations.front().at);
    const double last = std::max(dimension.datum, dimension.stations.back().at);
    sheet.line(LineRole::dimension, along_run(run, first, dimension.line_at),
               along_run(run, last, dimension.line_at));
    draw_extension(sheet, run, dimension.datum, dimension.outline, dimension.line_at);
    sheet.circle(LineRole::dimension, along_run(run, dimension.datum, dimension.line_at), datum_radius);
    for (std::size_t i = 0; i < places.size(); ++i) {
        draw_station(sheet, dimension, dimension.stations[i], places[i]);
        draw_station_figure(sheet, dimension, dimension.stations[i].text, places[i], fonts);
    }
}

}  // namespace rodwright::drawing
