// Whether what is printed is as long as it says: the lines of the PDF's own content streams, and of a
// rendered page, against sizes worked out by hand from the designs.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <map>
#include <sstream>

#include "backends/packet/packet.hpp"
#include "tests/support/scratch_folder.hpp"
#include "tests/unit/drawing/making.hpp"

using namespace rodwright;
using drawing::Point;

namespace {

constexpr double points_a_millimetre = 72.0 / 25.4;
constexpr double tolerance = 0.05;  // mm

// A subpath as it stands in a content stream, millimetres: the points that it leads through, and of its first
// curve the two that it bends towards.
struct Path {
    std::vector<Point> points;
    std::vector<Point> bends;
};

std::vector<Path> paths_in(const std::string& content) {
    std::vector<Path> paths;
    std::istringstream lines(content);
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words(line);
        std::vector<double> numbers;
        for (double number = 0; words >> number;) numbers.push_back(number / points_a_millimetre);
        words.clear();
        std::string op;
        words >> op;
        const std::size_t n = numbers.size();
        if (op == "m" && n == 2) paths.push_back({{{numbers[0], numbers[1]}}, {}});
        if (paths.empty()) continue;
        Path& path = paths.back();
        if (op == "l" && n == 2) path.points.push_back({numbers[0], numbers[1]});
        if (op == "c" && n == 6) {
            if (path.bends.empty()) path.bends = {{numbers[0], numbers[1]}, {numbers[2], numbers[3]}};
            path.points.push_back({numbers[4], numbers[5]});
        }
    }
    return paths;
}

bool is_near(double a, double b) {
    return std::abs(a - b) <= tolerance;
}

// A packet on disk, with its pages' content streams in plain text.
struct Printed {
    ScratchFolder folder;
    std::vector<std::vector<Path>> pages;
    std::vector<bool> has_bar;

    Printed(const std::string& example, const std::string& format) {
        testing::Making& making = testing::made_example(example);
        OutputFolder out;
        make_packet_backend()->emit(making.input, {{"sheet", format}}, out, making.diagnostics);
        folder.put("packet.pdf", out.files().at("packet.pdf"));
        run("qpdf --qdf --object-streams=disable " + path("packet.pdf") + " " + path("plain.pdf"));
        run("pdftotext " + path("packet.pdf") + " " + path("packet.txt"));
        const std::string plain = folder.get("plain.pdf");
        for (std::size_t page = 1;; ++page) {
            const std::size_t start = plain.find("%% Contents for page " + std::to_string(page) + "\n");
            if (start == std::string::npos) break;
            pages.push_back(paths_in(plain.substr(start, plain.find("endstream", start) - start)));
        }
        std::istringstream text(folder.get("packet.txt"));
        for (std::string page; std::getline(text, page, '\f');)
            has_bar.push_back(page.find("measure both before you use the template") != std::string::npos);
        REQUIRE(has_bar.size() >= pages.size());
    }
    std::string path(const std::string& name) const { return (folder.path() / name).string(); }
    static void run(const std::string& command) {
        REQUIRE(std::system((command + " >/dev/null 2>&1").c_str()) == 0);
    }
};

const Printed& printed(const std::string& example, const std::string& format) {
    static std::map<std::pair<std::string, std::string>, Printed> known;
    return known.try_emplace({example, format}, example, format).first->second;
}

// The two ends of a scale bar: strokes of 3 mm stand on them, up from a level one, to the right of an upright
// one.
struct Bar {
    Point from;
    Point to;
};

std::vector<Bar> bars_in(const std::vector<Path>& paths, bool upright) {
    const auto has_tick = [&](Point foot) {
        const Point end = foot + (upright ? Point{3, 0} : Point{0, 3});
        return std::any_of(paths.begin(), paths.end(), [&](const Path& path) {
            return path.points.size() == 2 && path.bends.empty() &&
                   std::hypot(path.points[0].x - foot.x, path.points[0].y - foot.y) < 0.01 &&
                   is_near(path.points[1].x, end.x) && is_near(path.points[1].y, end.y);
        });
    };
    std::vector<Bar> bars;
    for (const Path& path : paths) {
        if (path.points.size() != 2 || !path.bends.empty()) continue;
        const Point way = path.points[1] - path.points[0];
        if (is_near(upright ? way.x : way.y, 0) && has_tick(path.points[0]) && has_tick(path.points[1]))
            bars.push_back({path.points[0], path.points[1]});
    }
    return bars;
}

std::size_t count_segments(const std::vector<std::vector<Path>>& pages, double across, double up) {
    std::size_t count = 0;
    for (const std::vector<Path>& page : pages) {
        for (const Path& path : page) {
            if (path.points.size() != 2 || !path.bends.empty()) continue;
            const Point way = path.points[1] - path.points[0];
            if (is_near(std::abs(way.x), across) && is_near(std::abs(way.y), up)) ++count;
        }
    }
    return count;
}

// Grey values of a rendered page, from the top.
struct Picture {
    int width = 0;
    int height = 0;
    std::string grey;

    bool dark(int x, int y) const {
        return static_cast<unsigned char>(grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                                               static_cast<std::size_t>(x)]) < 128;
    }
};

Picture rendered(const Printed& printed, std::size_t page) {
    const std::string number = std::to_string(page + 1);
    Printed::run("pdftoppm -r 300 -gray -singlefile -f " + number + " -l " + number + " " +
                 printed.path("packet.pdf") + " " + printed.path("page"));
    const std::string bytes = printed.folder.get("page.pgm");
    std::istringstream header(bytes);
    std::string magic;
    int most = 0;
    Picture picture;
    header >> magic >> picture.width >> picture.height >> most;
    REQUIRE(magic == "P5");
    picture.grey = bytes.substr(static_cast<std::size_t>(header.tellg()) + 1);
    return picture;
}

// The middles of the dark runs on one row between two columns.
std::vector<double> runs_on(const Picture& picture, int row, int from, int to) {
    std::vector<double> middles;
    for (int x = from; x < to; ++x) {
        if (!picture.dark(x, row)) continue;
        const int start = x;
        while (x < to && picture.dark(x, row)) ++x;
        middles.push_back((start + x - 1) / 2.0);
    }
    return middles;
}

}  // namespace

TEST_SUITE("reference/drawing") {
    TEST_CASE("the scale bars in the file are 4 in or 100 mm long both ways, on every sheet with templates") {
        struct Case {
            std::string example;
            std::string format;
            double length = 0;
        };
        for (const Case& each :
             {Case{"keepers_table", "letter", 4 * 25.4}, Case{"instrument_tray", "a4", 100.0}}) {
            CAPTURE(each.example);
            const Printed& file = printed(each.example, each.format);
            std::size_t sheets = 0;
            for (std::size_t page = 0; page < file.pages.size(); ++page) {
                if (!file.has_bar[page]) continue;
                ++sheets;
                const std::vector<Bar> across = bars_in(file.pages[page], false);
                REQUIRE(across.size() == 1);
                CHECK(std::abs(across[0].to.x - across[0].from.x - each.length) <= tolerance);
                const std::vector<Bar> upright = bars_in(file.pages[page], true);
                REQUIRE(upright.size() == 1);
                CHECK(std::abs(upright[0].to.y - upright[0].from.y - each.length) <= tolerance);
            }
            CHECK(sheets >= 2);
        }
    }

    TEST_CASE("outlines in the file are those of the parts") {
        // Leg: 29 1/2 - 13/16 = 28 11/16 in; tapered from 5 1/2 below its top on: 23 3/16 in along, and
        // 1 3/4 - 1 1/8 = 5/8 in across.
        const Printed& table = printed("keepers_table", "letter");
        CHECK(count_segments(table.pages, 23.1875 * 25.4, 0.625 * 25.4) >= 1);

        // Rail: an arc with a chord of 24 in and a rise of 3/4 in.
        const Printed& shelf = printed("chart_shelf", "a3");
        std::size_t arcs = 0;
        for (const std::vector<Path>& page : shelf.pages) {
            for (const Path& path : page) {
                if (path.points.size() != 2 || path.bends.size() != 2) continue;
                const Point a = path.points[0];
                const Point b = path.points[1];
                if (!is_near(std::abs(b.x - a.x), 24 * 25.4) || !is_near(a.y, b.y)) continue;
                ++arcs;
                // A cubic's middle is an eighth of its ends and three eighths of its bends.
                const double middle = (a.y + 3 * path.bends[0].y + 3 * path.bends[1].y + b.y) / 8;
                CHECK(std::abs(std::abs(middle - a.y) - 0.75 * 25.4) <= tolerance);
            }
        }
        CHECK(arcs >= 1);
    }

    TEST_CASE("a page rendered at 300 dots an inch has the bar's end ticks 1200 dots apart") {
        const Printed& file = printed("keepers_table", "letter");
        const auto first = std::find(file.has_bar.begin(), file.has_bar.end(), true);
        REQUIRE(first != file.has_bar.end());
        const auto page = static_cast<std::size_t>(first - file.has_bar.begin());
        const Picture picture = rendered(file, page);
        CHECK(picture.width == 2550);  // 8 1/2 in
        const Bar bar = bars_in(file.pages[page], false).at(0);
        const auto dots = [](double millimetres) {
            return static_cast<int>(std::lround(millimetres / 25.4 * 300));
        };
        // 2.5 mm over the line only the two ends reach.
        const int row = picture.height - dots(bar.from.y + 2.5);
        const std::vector<double> ticks = runs_on(picture, row, dots(bar.from.x) - 20, dots(bar.to.x) + 20);
        REQUIRE(ticks.size() == 2);
        CHECK(std::abs(ticks[1] - ticks[0] - 1200) <= 1);
    }
}
