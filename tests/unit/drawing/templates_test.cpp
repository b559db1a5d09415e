#include "backends/packet/templates/templates.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "backends/packet/packet.hpp"
#include "tests/support/sample_piece.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/sheet_check.hpp"

using namespace rodwright;
using namespace rodwright::drawing;
using testing::made_example;
using testing::Making;

static std::vector<std::string> files_of(const std::vector<packet::Template>& templates) {
    std::vector<std::string> files;
    for (const packet::Template& each : templates) files.push_back(each.file);
    return files;
}

static const packet::Template& named(const std::vector<packet::Template>& templates,
                                     const std::string& file) {
    const auto found = std::find_if(templates.begin(), templates.end(),
                                    [&](const packet::Template& each) { return each.file == file; });
    REQUIRE(found != templates.end());
    return *found;
}

static bool says(const packet::Template& each, const std::string& wanted) {
    const Sheet all = packet::whole(each);
    return std::any_of(all.items.begin(), all.items.end(), [&](const Item& item) {
        const auto* text = std::get_if<Text>(&item);
        return text != nullptr && text->text == wanted;
    });
}

// Straight lines of that role with those distances along x and y between their ends, mm.
static std::size_t count_lines(const packet::Template& each, LineRole role, double across, double up) {
    std::size_t count = 0;
    for (const Item& item : each.drawing.items) {
        const auto* stroke = std::get_if<Stroke>(&item);
        if (stroke == nullptr || stroke->role != role || stroke->points.size() != 2) continue;
        const Point way = stroke->points[1] - stroke->points[0];
        if (std::abs(std::abs(way.x) - across) < 1e-6 && std::abs(std::abs(way.y) - up) < 1e-6) ++count;
    }
    return count;
}

// Lines of 100 mm or 4 in across and upright that end in two long ticks each.
static std::array<int, 2> count_bars(const Sheet& sheet, LengthUnit unit) {
    const double length = unit == LengthUnit::inch ? 101.6 : 100;
    std::vector<std::array<Point, 2>> lines;
    for (const Item& item : sheet.items) {
        const auto* stroke = std::get_if<Stroke>(&item);
        if (stroke != nullptr && stroke->role == LineRole::dimension && stroke->points.size() == 2)
            lines.push_back({stroke->points[0], stroke->points[1]});
    }
    const auto tick_at = [&](Point at, Point aside) {
        return std::any_of(lines.begin(), lines.end(), [&](const auto& line) {
            const Point end = line[1] - at - aside * 3;
            return line[0] == at && std::hypot(end.x, end.y) < 1e-9;
        });
    };
    std::array<int, 2> bars{};
    for (const auto& [from, to] : lines) {
        const Point way = to - from;
        const bool across = std::abs(way.y) < 1e-9 && std::abs(way.x - length) < 1e-9;
        const bool upright = std::abs(way.x) < 1e-9 && std::abs(way.y - length) < 1e-9;
        const Point aside = across ? Point{0, 1} : Point{1, 0};
        if ((across || upright) && tick_at(from, aside) && tick_at(to, aside)) ++bars[across ? 0 : 1];
    }
    return bars;
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("templates of the examples: what is curved, set out, routed, or repeated, and nothing else") {
        Making& table = made_example("keepers_table");
        CHECK(files_of(packet::templates(table.context({}))) ==
              std::vector<std::string>{
                  "leg-A1", "stretcher-D-strip-sliding-dovetail", "joint-1-mortise-and-tenon-tenon",
                  "joint-1-mortise-and-tenon-mortise", "joint-2-mortise-and-tenon-tenon",
                  "joint-2-mortise-and-tenon-mortise", "joint-3-sliding-dovetail-tail",
                  "joint-3-sliding-dovetail-tail-profile", "joint-3-sliding-dovetail-socket",
                  "joint-3-sliding-dovetail-socket-profile", "router-1-mortise-and-tenon",
                  "router-2-mortise-and-tenon", "router-3-sliding-dovetail", "router-4-buttons"});
        // The tray's housings, steps and grooves are as wide as the part that goes in: marked from that part,
        // and cut along a fence.
        Making& tray = made_example("instrument_tray");
        CHECK(files_of(packet::templates(tray.context({}))) == std::vector<std::string>{"divider-D"});
    }

    TEST_CASE("a tapered leg: its two ends and the start of the taper, the slope as long as it is") {
        Making& making = made_example("keepers_table");
        const auto templates = packet::templates(making.context({}));
        const packet::Template& leg = named(templates, "leg-A1");
        // 29 1/2 - 13/16 long, the taper from 5 1/2 below the top on: 23 3/16 = 588.9625 mm along, and
        // 1 3/4 - 1 1/8 = 5/8 = 15.875 mm across. Once in every stretch that is drawn.
        CHECK(count_lines(leg, LineRole::visible, 588.9625, 15.875) == 3);
        for (const char* text : {"23 3/16\"", "28 11/16\"", "1 1/8\"", "1 3/4\"", "reference end", "grain"}) {
            CAPTURE(text);
            CHECK(says(leg, text));
        }
        // Drawn: an inch at the ends, an inch either side of the start. Left out: 23 3/16 - 2 and 5 1/2 - 2.
        CHECK(says(leg, "21 3/16\""));
        CHECK(says(leg, "3 1/2\""));
        CHECK(leg.drawing.frame.width() < 170);
    }

    TEST_CASE("an arched rail is drawn whole, its curve as an arc") {
        Making& making = made_example("chart_shelf");
        const auto templates = packet::templates(making.context({}));
        const packet::Template& rail = named(templates, "rail-C");
        std::vector<Arc> arcs;
        for (const Item& item : rail.drawing.items) {
            const auto* arc = std::get_if<Arc>(&item);
            if (arc != nullptr && arc->role == LineRole::visible && !arc->whole()) arcs.push_back(*arc);
        }
        REQUIRE(arcs.size() == 1);
        // Chord 24 in, rise 3/4 in: radius 24^2 / (8 x 3/4) + 3/8 = 96 3/8 in.
        CHECK(arcs[0].radius == doctest::Approx(96.375 * 25.4).epsilon(1e-9));
        CHECK(std::abs(arcs[0].from().x - arcs[0].to().x) == doctest::Approx(24 * 25.4).epsilon(1e-9));
        // Between the sides: 32 less two boards of 3/4.
        CHECK(rail.drawing.frame.width() > 30.5 * 25.4);
        for (const char* text : {"3 1/4\"", "27 1/4\"", "30 1/2\"", "3/4\""}) {
            CAPTURE(text);
            CHECK(says(rail, text));
        }
    }

    TEST_CASE("a layout strip has both edges of every place, from the reference end") {
        Making& making = made_example("chart_shelf");
        const auto templates = packet::templates(making.context({}));
        const packet::Template& side = named(templates, "side-A1-strip-housing");
        // 24 in tall, shelves of 3/4: the first 1 1/2 from the end, the last ends as far from the other; the
        // middle one half-way: 12 - 3/8.
        for (const char* text :
             {"1 1/2\"", "2 1/4\"", "11 5/8\"", "12 3/8\"", "21 3/4\"", "22 1/2\"", "24\""}) {
            CAPTURE(text);
            CHECK(says(side, text));
        }
    }

    TEST_CASE("a mortise's layout is where the mortise is, to be pricked through") {
        Making& making = made_example("keepers_table");
        const auto templates = packet::templates(making.context({}));
        // Stretcher 1 3/4 x 3/4: tenon 1/4 thick, 1/4 in from each edge.
        for (const char* file : {"joint-2-mortise-and-tenon-tenon", "joint-2-mortise-and-tenon-mortise"}) {
            const packet::Template& layout = named(templates, file);
            for (const char* text : {"1/4\"", "1/2\"", "3/4\"", "1 1/2\"", "1 3/4\""}) {
                CAPTURE(text);
                CHECK(says(layout, text));
            }
        }
    }

    TEST_CASE("a dovetail's tail and socket are drawn along the slide too, to the bit's angle") {
        Making& making = made_example("keepers_table");
        const auto templates = packet::templates(making.context({}));
        for (const char* part : {"tail", "socket"}) {
            const packet::Template& layout =
                named(templates, std::string("joint-3-sliding-dovetail-") + part + "-profile");
            CHECK(says(layout, "1/4\""));  // deep, from the face
            std::vector<std::vector<Point>> tails;
            for (const Item& item : layout.drawing.items) {
                const auto* stroke = std::get_if<Stroke>(&item);
                if (stroke == nullptr || stroke->role != LineRole::visible || stroke->points.size() != 4)
                    continue;
                tails.push_back(stroke->points);
            }
            REQUIRE(tails.size() == 1);
            // 14 degrees over a depth of 1/4 in: each slope goes 6.35 tan 14 = 1.5832 mm in. 15/16 in at the
            // tip.
            std::vector<double> across;
            for (const Point& corner : tails[0]) across.push_back(corner.x);
            std::sort(across.begin(), across.end());
            CHECK(across[3] - across[0] == doctest::Approx(15.0 / 16 * 25.4));
            CHECK(across[1] - across[0] == doctest::Approx(1.5832).epsilon(1e-4));
            CHECK(across[3] - across[2] == doctest::Approx(1.5832).epsilon(1e-4));
        }
    }

    TEST_CASE(
        "template sheets keep to their frames in every format, each with a scale bar across and one "
        "upright") {
        for (const std::string& name : testing::example_names()) {
            Making& making = made_example(name);
            for (const SheetFormat& format : sheet_formats()) {
                for (const char* units : {"auto", "both"}) {
                    CAPTURE(name);
                    CAPTURE(format.word);
                    CAPTURE(units);
                    const packet::Context context =
                        making.context({{"sheet", format.word}, {"units", units}});
                    const auto drafts = packet::template_sheets(context, packet::templates(context));
                    CHECK(!drafts.empty());
                    for (const packet::Draft& draft : drafts) {
                        for (const std::string& fault : testing::faults_of(draft.sheet, *making.fonts))
                            FAIL_CHECK(fault);
                        CHECK(count_bars(draft.sheet, context.piece.style.unit) == std::array{1, 1});
                    }
                }
            }
        }
    }

    TEST_CASE("each template is an SVG of its own, uncut and full size") {
        Making& making = made_example("keepers_table");
        OutputFolder out;
        make_packet_backend()->emit(making.input, {}, out, making.diagnostics);
        CHECK(out.files().size() == 1 + 14);
        const std::string& strip = out.files().at("templates/stretcher-D-strip-sliding-dovetail.svg");
        // 14 1/2 in between the legs, and what stands beside it.
        const double width = std::stod(strip.substr(strip.find("width=\"") + 7));
        CHECK(width > 14.5 * 25.4);
        CHECK(width < 14.5 * 25.4 + 20);
    }

    TEST_CASE("a part longer than paper is for stays off the sheets, which say where its SVG is") {
        Piece piece = sample_piece();
        Kind& leg = piece.kinds[0];
        leg.size[Axis::wide] = 6000;
        // A curve from end to end, of which nothing is left out.
        leg.features[0].body.profile.clear();
        for (int i = 0; i <= 12; ++i) leg.features[0].body.profile.push_back({500 * i, i * (12 - i) / 2});
        Making making(std::move(piece));
        const packet::Context context = making.context({});
        const auto templates = packet::templates(context);
        CHECK(named(templates, "leg-A1").drawing.frame.width() > 6000);
        bool said = false;
        for (const packet::Draft& draft : packet::template_sheets(context, templates)) {
            CHECK(draft.sheet.title.find("A1 leg, tile") == std::string::npos);
            CHECK(testing::faults_of(draft.sheet, *making.fonts).empty());
            for (const Item& item : draft.sheet.items) {
                const auto* text = std::get_if<Text>(&item);
                said |= text != nullptr && text->text.find("templates/leg-A1.svg") != std::string::npos;
            }
        }
        CHECK(said);
    }

    TEST_CASE("file names hold nothing that a file system minds") {
        CHECK(packet::file_name({"side_apron", "A1"}) == "side-apron-A1");
        CHECK(packet::file_name({"../x", "till.front"}) == "---x-till-front");
    }
}
