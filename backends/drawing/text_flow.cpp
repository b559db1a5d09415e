#include "backends/drawing/text_flow.hpp"

#include <algorithm>

namespace rodwright::drawing {

namespace {

struct FlowLine {
    std::string text;
    FontFace face = FontFace::regular;
    double indent = 0;
};

using Lines = std::vector<FlowLine>;

Lines lines_of(const FlowBlock& block, double width, double height, const Fonts& fonts) {
    Lines lines;
    for (std::string& line : wrap(block.heading, FontFace::bold, height, width, fonts)) {
        lines.push_back({std::move(line), FontFace::bold, 0});
    }
    for (const std::string& paragraph : block.paragraphs) {
        double indent = 0;
        for (std::string& line : wrap(paragraph, FontFace::regular, height, width - height, fonts)) {
            lines.push_back({std::move(line), FontFace::regular, indent});
            indent = height;  // the second line of a paragraph stands in
        }
    }
    return lines;
}

struct PlacedLine {
    FlowLine line;
    Point at;
    std::size_t block = 0;
};

// Fills the columns; stops being `complete` when the last is full.
class Filler {
  public:
    Filler(std::vector<Rect> columns, double height)
        : columns_(std::move(columns)), height_(height), top_(columns_[0].top) {}

    void add(const Lines& block) {
        const double whole = block_height(block.size(), height_);
        if (top_ - whole < columns_[column_].bottom && top_ < columns_[column_].top) next_column();
        for (const FlowLine& line : block) add_line(line);
        top_ -= 1.4 * height_;
        ++block_;
    }
    bool complete() const { return complete_; }
    const std::vector<PlacedLine>& placed() const { return placed_; }

  private:
    void next_column() {
        if (column_ + 1 == columns_.size()) return;
        ++column_;
        top_ = columns_[column_].top;
    }
    void add_line(const FlowLine& line) {
        const double needed = height_ * (reach_above + reach_below + 0.35);
        if (top_ - needed < columns_[column_].bottom) {
            if (column_ + 1 == columns_.size()) complete_ = false;
            next_column();
        }
        placed_.push_back({line, {columns_[column_].left + line.indent, top_ - 1.25 * height_}, block_});
        top_ -= line_pitch * height_;
    }

    std::vector<Rect> columns_;
    double height_;
    double top_;
    std::size_t column_ = 0;
    std::size_t block_ = 0;
    bool complete_ = true;
    std::vector<PlacedLine> placed_;
};

Filler filled(const std::vector<FlowBlock>& blocks, const std::vector<Rect>& columns, double height,
              const Fonts& fonts) {
    double width = columns[0].width();
    for (const Rect& column : columns) width = std::min(width, column.width());
    Filler filler(columns, height);
    for (const FlowBlock& block : blocks) filler.add(lines_of(block, width, height, fonts));
    return filler;
}

// Where the block's next links stand in one of its lines; `next` moves past them.
void draw_links(Sheet& sheet, const FlowBlock& block, const PlacedLine& placed, double height,
                const Fonts& fonts, std::size_t& next) {
    const std::string& line = placed.line.text;
    const auto width_to = [&](std::size_t end) {
        return text_width(line.substr(0, end), placed.line.face, height, fonts);
    };
    for (std::size_t from = 0; next < block.links.size(); ++next) {
        const FlowLink& link = block.links[next];
        const std::size_t at = line.find(link.text, from);
        if (at == std::string::npos) return;
        from = at + link.text.size();
        const Rect box{placed.at.x + width_to(at), placed.at.y - height * reach_below,
                       placed.at.x + width_to(from), placed.at.y + height * reach_above};
        sheet.items.emplace_back(Link{box, link.anchor});
    }
}

}  // namespace

double flow_height(const std::vector<FlowBlock>& blocks, const std::vector<Rect>& columns, double height,
                   const Fonts& fonts) {
    constexpr double smallest = 0.5;
    while (height > smallest && !filled(blocks, columns, height, fonts).complete()) height *= 0.94;
    return height;
}

void draw_flow(Sheet& sheet, const std::vector<FlowBlock>& blocks, const std::vector<Rect>& columns,
               double height, const Fonts& fonts) {
    height = flow_height(blocks, columns, height, fonts);
    const Filler filler = filled(blocks, columns, height, fonts);
    std::vector<std::size_t> next_link(blocks.size());
    for (const PlacedLine& placed : filler.placed()) {
        sheet.text({placed.line.text, placed.line.face, height, placed.at, Align::left, false});
        draw_links(sheet, blocks[placed.block], placed, height, fonts, next_link[placed.block]);
    }
}

}  // namespace rodwright::drawing
