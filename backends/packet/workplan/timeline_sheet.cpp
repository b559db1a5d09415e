// When what is done: a bar for every step, full while hands are at it and thin while it waits. Long waits are
// drawn short, so that the hours of work can be read.
#include <fmt/format.h>
#include <algorithm>

#include "backends/drawing/text_layout.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/whole/whole_views.hpp"
#include "backends/work_words.hpp"
#include "compiler/workplan/duration.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double tallest_row = 4.2;  // mm a step
constexpr double lowest_row = 3.15;
constexpr double text = 1.9;              // height of its words
constexpr double longest_gap = 3 * 3600;  // of nobody's work, as drawn

// The clock of the paper: time in which nobody works is drawn no longer than longest_gap.
class Clock {
  public:
    explicit Clock(const WorkPlan& plan) {
        std::vector<std::pair<Seconds, Seconds>> work;
        for (const Operation& step : plan.operations) work.emplace_back(step.time.begin, step.time.end);
        std::ranges::sort(work);
        Seconds until = 0;
        double drawn = 0;
        for (const auto& [begin, end] : work) {
            if (begin > until) {
                drawn += std::min<double>(longest_gap, static_cast<double>(begin - until));
                marks_.push_back({begin, drawn});
                until = begin;
            }
            if (end > until) {
                drawn += static_cast<double>(end - until);
                until = end;
                marks_.push_back({end, drawn});
            }
        }
        const Seconds last = std::max(plan.sums.makespan, until);
        marks_.push_back({last, drawn + std::min<double>(longest_gap, static_cast<double>(last - until))});
    }

    double drawn(Seconds time) const {
        Mark before{0, 0};
        for (const Mark& mark : marks_) {
            if (time <= mark.time) {
                if (mark.time == before.time) return mark.drawn;
                const double share =
                    static_cast<double>(time - before.time) / static_cast<double>(mark.time - before.time);
                return before.drawn + share * (mark.drawn - before.drawn);
            }
            before = mark;
        }
        return before.drawn;
    }
    double length() const { return marks_.back().drawn; }

  private:
    struct Mark {
        Seconds time;
        double drawn;
    };
    std::vector<Mark> marks_;
};

class Timeline {
  public:
    Timeline(const Context& context, const WorkPlan& plan) : context_(context), plan_(plan), clock_(plan) {}

    std::vector<Draft> draw() {
        for (std::size_t i = 0; i < plan_.operations.size(); ++i) {
            if (drafts_.empty() || y_ - row_ < bars_.bottom) new_sheet();
            draw_step(i);
        }
        return std::move(drafts_);
    }

  private:
    Sheet& sheet() { return drafts_.back().sheet; }

    void words(const std::string& said, Point at, Align align, double width,
               FontFace face = FontFace::regular, double height = text) {
        sheet().text(fitted({said, face, height, at, align, false}, width, context_.fonts));
    }

    void new_sheet() {
        drafts_.push_back(new_draft(context_, "timeline", "Timeline"));
        Rect room = drawing_room(sheet().frame).grown(-sheet_edge);
        words(drafts_.size() == 1 ? "Timeline" : "Timeline, continued", {room.left, room.top - 5},
              Align::left, room.width(), FontFace::bold, 4.5);
        double top = room.top - 9;
        if (drafts_.size() == 1) {
            for (const std::string& sentence : sums_words(plan_)) top = paragraph(sentence, room, top);
            top = paragraph(
                "Full bars: hands at work; thin bars: glue or finish drying. Idle time is drawn short. "
                "Before the bars: the day, and the hours since its morning.",
                room, top);
        }
        bars_ = room;
        bars_.left = room.left + 0.4 * room.width();
        bars_.top = top - 5;
        y_ = bars_.top;
        // All on one sheet if that can still be read.
        if (drafts_.size() == 1)
            row_ = std::clamp(bars_.height() / static_cast<double>(plan_.operations.size()), lowest_row,
                              tallest_row);
    }

    double paragraph(const std::string& said, const Rect& room, double top) {
        const std::vector<std::string> lines =
            wrap(said, FontFace::regular, 2.5, room.width(), context_.fonts);
        set_lines(sheet(), lines, {"", FontFace::regular, 2.5, {room.left, 0}, Align::left, false}, top);
        return top - line_pitch * 2.5 * static_cast<double>(lines.size()) - 1;
    }

    double x(Seconds time) const { return bars_.left + clock_.drawn(time) / clock_.length() * bars_.width(); }

    // "2, 3:05": the day and the hours since its morning.
    static std::string clock(Seconds time) {
        constexpr Seconds hour = 3600;
        constexpr Seconds day = 24 * hour;
        return fmt::format("{}, {}:{:02}", time / day + 1, time % day / hour, time % hour / 60);
    }

    void box(double from, double to, double low, double high, bool full) {
        const double least = 0.4;  // that something can be seen
        to = std::max(to, from + least);
        const std::vector<Point> corners = {{from, low}, {to, low}, {to, high}, {from, high}};
        if (full) sheet().fill({120, 120, 120}, corners);
        sheet().polyline(LineRole::table, corners, true);
    }

    void draw_step(std::size_t number) {
        const Operation& step = plan_.operations[number];
        const double low = y_ - row_;
        const std::string name = fmt::format("{}  {}", number + 1, operation_title(step));
        constexpr double time_room = 14;
        constexpr double foot = 0.65;  // of the words over the row's lower edge
        words(name, {bars_.left - room_for_names(), low + foot}, Align::left,
              room_for_names() - time_room - 3);
        words(clock(step.time.begin), {bars_.left - 2, low + foot}, Align::right, time_room);
        // A line for the eye at every fifth.
        if ((number + 1) % 5 == 0)
            sheet().line(LineRole::table, {bars_.left - room_for_names(), low}, {bars_.right, low});
        const double share = plan_.sums.workers > 1 && step.time.worker == 1 ? 0.5 : 0.0;
        box(x(step.time.begin), x(step.time.end), low + 0.7, y_ - 0.7 - share, true);
        if (step.wait > 0)
            box(x(step.time.end), x(std::min(step.time.end + step.wait, plan_.sums.makespan)), low + 1.7,
                y_ - 1.7, false);
        y_ = low;
    }

    double room_for_names() const {
        const Rect room = drawing_room(drafts_.back().sheet.frame).grown(-sheet_edge);
        return bars_.left - room.left;
    }

    const Context& context_;
    const WorkPlan& plan_;
    Clock clock_;
    std::vector<Draft> drafts_;
    Rect bars_;
    double y_ = 0;
    double row_ = tallest_row;
};

}  // namespace

std::vector<Draft> timeline_sheets(const Context& context) {
    const WorkPlan* plan = context.input.work;
    if (plan == nullptr || plan->operations.empty()) return {};
    return Timeline(context, *plan).draw();
}

}  // namespace rodwright::packet
